import { KINDS } from './part-kinds.mjs';
import { textWidth } from './stroke-font.mjs';

const SMALL = ['capacitor', 'resistor', 'bigCapacitor', 'transistor'];

/** Gives each part's label a free place beside it: above, below, right or left. A small part without a free place goes without one. */
export function placeLabels(board) {
  const taken = [...board.parts.map(boxOf), { ...board.title, w: 15, h: 2.4 }, ...board.holes.map((hole) => ({ ...hole, w: 5, h: 5 }))];
  const inOrder = [...board.parts].sort((a, b) => SMALL.includes(a.kind) - SMALL.includes(b.kind));
  for (const part of inOrder) {
    const size = part.kind === 'testPoint' ? 1.1 : SMALL.includes(part.kind) ? 0.85 : 1;
    const free = placesBeside(part, size).find((place) => within(place, board) && taken.every((other) => !meets(place, other)));
    if (!free && SMALL.includes(part.kind)) continue;
    const place = free ?? placesBeside(part, size)[0];
    taken.push(place);
    part.labelAt = { x: place.x - place.w / 2, y: place.y + size / 2, size };
  }
}

function boxOf(part) {
  const [w, h] = KINDS[part.kind].court;
  const trim = SMALL.includes(part.kind) ? 0.5 : 0.2;
  return part.turn % 180 === 0 ? { x: part.x, y: part.y, w: w - trim, h: h - trim } : { x: part.x, y: part.y, w: h - trim, h: w - trim };
}

function placesBeside(part, size) {
  const { x, y, w, h } = boxOf(part);
  const label = { w: textWidth(part.label, size), h: size };
  return [
    { ...label, x, y: y - h / 2 - size * 0.75 },
    { ...label, x, y: y + h / 2 + size * 0.75 },
    { ...label, x: x + w / 2 + label.w / 2 + 0.3, y },
    { ...label, x: x - w / 2 - label.w / 2 - 0.3, y },
  ];
}

const meets = (a, b) => Math.abs(a.x - b.x) * 2 < a.w + b.w && Math.abs(a.y - b.y) * 2 < a.h + b.h;

const within = (a, board) =>
  a.x - a.w / 2 > 0.6 && a.x + a.w / 2 < board.width - 0.6 && a.y - a.h / 2 > 0.6 && a.y + a.h / 2 < board.height - 0.6;
