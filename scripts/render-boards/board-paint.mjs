import { box, disc } from '../demo-photos/relief.mjs';
import { textPath, textWidth } from '../demo-photos/stroke-font.mjs';
import { padsOf } from '../demo-photos/pads-of.mjs';
import { courtOf, PACKAGES } from './packages.mjs';

/** The mask over copper and over bare laminate, and the print on it. */
export const MASKS = {
  green: { copper: '#1f5c3a', gap: '#0c2c1f', silk: '#e2e4d8' },
  blue: { copper: '#1f4a80', gap: '#0c2344', silk: '#e6e8ea' },
  ochre: { copper: '#86682a', gap: '#4a3614', silk: '#ece6d2' },
  black: { copper: '#26282b', gap: '#0f1011', silk: '#dedede' },
  red: { copper: '#8a2226', gap: '#4b1014', silk: '#eadfdc' },
};

/** Everything that is flat on a board, in the order in which it is painted: path data in mm with fill, or stroke and width. */
export function boardPaint(board) {
  const { copper, gap, silk } = MASKS[board.mask];
  const paint = [{ d: box(board.width / 2, board.height / 2, board.width, board.height), fill: copper }];
  const lines = (points) => `M${points.map((p) => `${p.x.toFixed(2)} ${p.y.toFixed(2)}`).join('L')}`;
  for (const part of board.parts)
    for (const pad of padsOf({ ...part, pads: PACKAGES[part.kind].pads }))
      paint.push({ d: box(pad.x, pad.y, pad.w + 0.5, pad.h + 0.5), fill: gap });
  for (const { points, width } of board.tracks) paint.push({ d: lines(points), stroke: gap, width: width + 0.36 });
  for (const { points, width } of board.tracks) paint.push({ d: lines(points), stroke: copper, width });
  for (const via of board.vias)
    paint.push(
      { d: disc(via.x, via.y, 0.6), fill: gap },
      { d: disc(via.x, via.y, 0.4), fill: copper },
      { d: disc(via.x, via.y, 0.15), fill: '#0c0f0c' },
    );
  for (const { x, y } of board.holes) paint.push({ d: disc(x, y, 2.4), fill: '#b4b7b2' }, { d: disc(x, y, 1.3), fill: '#0e0d0b' });
  for (const part of board.parts) paint.push(...silkOf(part, silk));
  const size = 1.8;
  paint.push({
    d: textPath(board.name, (board.width - textWidth(board.name, size)) / 2, board.height - 1.2, size),
    stroke: silk,
    width: 0.26,
  });
  return paint;
}

function silkOf(part, silk) {
  const turned = ([w, h]) => (part.turn % 180 === 0 ? [w, h] : [h, w]);
  const [w, h] = turned(courtOf(part.kind));
  const size = part.kind.startsWith('0') || PACKAGES[part.kind].form === 'printed' ? 0.8 : 1;
  const label = { d: textPath(part.ref, part.x - textWidth(part.ref, size) / 2, part.y - h / 2 - 0.2, size), stroke: silk, width: 0.14 };
  if (part.kind === 'TP' || part.kind.startsWith('0')) return [label];
  return [{ d: box(part.x, part.y, w + 0.3, h + 0.3, 0.2), stroke: silk, width: 0.15 }, label];
}
