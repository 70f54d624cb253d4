import type { Patch } from '../colour/white-balance.ts';
import { components } from '../image/components.ts';
import type { Plane } from '../image/plane.ts';
import type { Ground } from './board-ground.ts';
import { aroundRows, facingRows, pinRowsOf, type PinRow } from './pin-rows.ts';
import { roundsOf, type Round } from './rounds.ts';

/** A rectangle that may be a part, in px of the working picture, and how it was come by. */
export interface Rectangle extends Patch {
  readonly from: 'group' | 'pair' | 'row' | 'round';
  /** Pins of the rows it was put around; 0 where it was put around none. */
  readonly pins: number;
  /** The round edge it was put around. */
  readonly round?: Round;
}

/** All that may be a part, a row of pins, a test point or a hole, and the rows of pins by themselves. */
export interface Candidates {
  readonly rectangles: readonly Rectangle[];
  readonly rows: readonly PinRow[];
}

/** Distances from the bare board at which pixels count as something. */
const LEVELS = [14, 22, 34, 52, 80, 120];
/** Gaps that are bridged before groups are read, mm. */
const BRIDGED_MM = [0, 0.2, 0.4, 0.7];
/** Brightness above the bare board from which a pixel may be solder or a bare pad. */
const BRIGHT = [35, 60, 95];
const LEAST_MM = 0.4;
const TERMINAL_MM = { least: 0.25, most: 3.4 };
/** How far terminals of one part lie apart at most: mm, and times their own breadth. */
const GAP = { mm: 4, breadths: 5 };

/** Candidates of four kinds: around round edges, rows of pins, pairs of like bright places, and around all that stands out from the bare board at several levels. */
export function candidatesOf(ground: Ground, board: Patch, perMm: number): Candidates {
  const terminals = BRIGHT.map((level) => terminalsOf(ground.grey, level, board, perMm));
  const rows = terminals.flatMap((places) => pinRowsOf(places, perMm));
  const rectangles = [
    ...roundsOf(ground.grey, board, perMm).map(aroundRound),
    ...rows.map((row) => aroundPins([row])),
    ...facingRows(rows, perMm).map(aroundPins),
    ...terminals.flatMap((places) => pairsOf(places, perMm)),
    ...groupsOf(ground.distance, board, perMm),
  ];
  return { rectangles: withoutTwins(rectangles), rows };
}

const aroundRound = (round: Round): Rectangle => ({
  left: Math.round(round.x - round.radius),
  top: Math.round(round.y - round.radius),
  right: Math.round(round.x + round.radius) + 1,
  bottom: Math.round(round.y + round.radius) + 1,
  from: 'round',
  pins: 0,
  round,
});

const aroundPins = (rows: readonly PinRow[]): Rectangle => ({
  ...aroundRows(rows),
  from: 'row',
  pins: rows.reduce((sum, { pins }) => sum + pins.length, 0),
});

function groupsOf(distance: Plane, board: Patch, perMm: number): Rectangle[] {
  const mostPx = 0.75 * Math.max(board.right - board.left, board.bottom - board.top);
  const found: Rectangle[] = [];
  for (const level of LEVELS)
    for (const bridged of BRIDGED_MM) {
      const mask = closed(maskOf(distance, level, board), distance.width, Math.round((bridged * perMm) / 2));
      for (const { left, top, right, bottom } of components(mask, distance.width)) {
        const [w, h] = [right + 1 - left, bottom + 1 - top];
        if (Math.min(w, h) >= LEAST_MM * perMm && Math.max(w, h) <= mostPx)
          found.push({ left, top, right: right + 1, bottom: bottom + 1, from: 'group', pins: 0 });
      }
    }
  return found;
}

function maskOf({ width, height, data }: Plane, level: number, { left, top, right, bottom }: Patch): Uint8Array {
  const mask = new Uint8Array(data.length);
  for (let y = Math.max(0, Math.floor(top)); y < Math.min(height, bottom); y++)
    for (let x = Math.max(0, Math.floor(left)); x < Math.min(width, right); x++) if (data[y * width + x]! > level) mask[y * width + x] = 1;
  return mask;
}

/** Grown by `radius` px to all sides and shrunk again: gaps up to twice the radius close. */
function closed(mask: Uint8Array, width: number, radius: number): Uint8Array {
  if (radius < 1) return mask;
  return spread(spread(mask, width, radius, 1), width, radius, 0);
}

/** Every pixel within `radius` (a square) of one of that value takes it. */
function spread(mask: Uint8Array, width: number, radius: number, value: 0 | 1): Uint8Array {
  const height = mask.length / width;
  return spreadAlong(spreadAlong(mask, width, height, 1, width, radius, value), height, width, width, 1, radius, value);
}

function spreadAlong(
  mask: Uint8Array,
  length: number,
  lines: number,
  step: number,
  next: number,
  radius: number,
  value: 0 | 1,
): Uint8Array {
  const out = mask.slice();
  for (let line = 0; line < lines; line++) {
    let until = -1;
    for (let k = -radius; k < length; k++) {
      if (k + radius < length && mask[line * next + (k + radius) * step] === value) until = k + 2 * radius;
      if (k >= 0 && k <= until) out[line * next + k * step] = value;
    }
  }
  return out;
}

function terminalsOf(grey: Plane, level: number, board: Patch, perMm: number): Patch[] {
  return components(maskOf(grey, level, board), grey.width)
    .map(({ left, top, right, bottom }) => ({ left, top, right: right + 1, bottom: bottom + 1 }))
    .filter(({ left, top, right, bottom }) => {
      const [w, h] = [(right - left) / perMm, (bottom - top) / perMm];
      return Math.min(w, h) >= TERMINAL_MM.least && Math.max(w, h) <= TERMINAL_MM.most;
    });
}

/** Rectangles around two terminals that stand side by side and are about alike. */
function pairsOf(terminals: readonly Patch[], perMm: number): Rectangle[] {
  const found: Rectangle[] = [];
  for (const a of terminals)
    for (const b of terminals) {
      if (b.left >= a.right && areFacing(a, b, perMm, false)) found.push(around(a, b));
      if (b.top >= a.bottom && areFacing(a, b, perMm, true)) found.push(around(a, b));
    }
  return found;
}

const around = (a: Patch, b: Patch): Rectangle => ({
  left: Math.min(a.left, b.left),
  top: Math.min(a.top, b.top),
  right: Math.max(a.right, b.right),
  bottom: Math.max(a.bottom, b.bottom),
  from: 'pair',
  pins: 0,
});

function areFacing(a: Patch, b: Patch, perMm: number, upright: boolean): boolean {
  const [aLow, aHigh, bLow, bHigh] = upright ? [a.left, a.right, b.left, b.right] : [a.top, a.bottom, b.top, b.bottom];
  const gap = upright ? b.top - a.bottom : b.left - a.right;
  const [aWide, bWide] = [aHigh - aLow, bHigh - bLow];
  const shared = Math.min(aHigh, bHigh) - Math.max(aLow, bLow);
  if (shared < 0.65 * Math.max(aWide, bWide)) return false;
  if (gap > GAP.mm * perMm || gap > GAP.breadths * Math.min(aWide, bWide)) return false;
  const [aDeep, bDeep] = upright ? [a.bottom - a.top, b.bottom - b.top] : [a.right - a.left, b.right - b.left];
  return Math.max(aDeep, bDeep) < 2.5 * Math.min(aDeep, bDeep) + 2;
}

/** Of rectangles that are the same to about a pixel or two, the first. */
function withoutTwins(rectangles: readonly Rectangle[]): Rectangle[] {
  const kept = new Map<string, Rectangle>();
  for (const rectangle of rectangles) {
    const { left, top, right, bottom } = rectangle;
    const grain = Math.max(2, Math.round(Math.min(right - left, bottom - top) / 6));
    const key = [left + right, top + bottom, right - left, bottom - top].map((value) => Math.round(value / grain)).join();
    if (!kept.has(key)) kept.set(key, rectangle);
  }
  return [...kept.values()];
}
