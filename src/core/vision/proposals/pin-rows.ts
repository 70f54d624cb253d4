import type { Patch } from '../colour/white-balance.ts';

/** Like places in a line at one pitch: the pins of a chip, of a socket, or bare lands. In px of the working picture. */
export interface PinRow {
  readonly pins: readonly Patch[];
  /** Whether they run along x or along y. */
  readonly along: 'x' | 'y';
  readonly pitch: number;
}

/** Pitches that are sought, mm, and by how much of it a pin may miss its place. */
const PITCH_MM = { least: 0.4, most: 3.2 };
const MISS = 0.18;
const LEAST_PINS = 3;

/** The rows among bright places; `perMm` px are a millimetre. A row begins with a place and its next like it, and is given once, to its last pin. */
export function pinRowsOf(places: readonly Patch[], perMm: number): PinRow[] {
  return (['x', 'y'] as const).flatMap((along) =>
    rowsAlong(
      places.map((patch) => seenAlong(patch, along)),
      along,
      perMm,
    ),
  );
}

/** A place as it lies along a row: its middle and sizes along and across. */
interface Place {
  readonly patch: Patch;
  readonly at: number;
  readonly off: number;
  readonly long: number;
  readonly wide: number;
}

function seenAlong(patch: Patch, along: 'x' | 'y'): Place {
  const [x, y] = [(patch.left + patch.right) / 2, (patch.top + patch.bottom) / 2];
  const [w, h] = [patch.right - patch.left, patch.bottom - patch.top];
  return along === 'x' ? { patch, at: x, off: y, long: w, wide: h } : { patch, at: y, off: x, long: h, wide: w };
}

function rowsAlong(places: readonly Place[], along: 'x' | 'y', perMm: number): PinRow[] {
  const sorted = [...places].sort((a, b) => a.at - b.at);
  const found: PinRow[] = [];
  const inRow = new Set<Place>();
  for (const [i, first] of sorted.entries()) {
    if (inRow.has(first)) continue;
    const second = sorted.slice(i + 1).find((place) => place.at - first.at >= PITCH_MM.least * perMm && areAlike(first, place));
    if (!second || second.at - first.at > PITCH_MM.most * perMm) continue;
    const row = grown(first, second, sorted);
    if (row.length < LEAST_PINS) continue;
    for (const place of row.slice(0, -1)) inRow.add(place);
    found.push({ pins: row.map(({ patch }) => patch), along, pitch: (row.at(-1)!.at - first.at) / (row.length - 1) });
  }
  return found;
}

const areAlike = (a: Place, b: Place): boolean =>
  Math.abs(a.off - b.off) < 0.2 * Math.max(a.wide, b.wide) + 1 &&
  Math.max(a.wide, b.wide) < 1.5 * Math.min(a.wide, b.wide) + 1 &&
  Math.max(a.long, b.long) < 1.6 * Math.min(a.long, b.long) + 1;

/** The row that two places begin: further ones, each where the last two lead. */
function grown(first: Place, second: Place, sorted: readonly Place[]): Place[] {
  const row = [first, second];
  for (;;) {
    const [last, pitch] = [row.at(-1)!, (row.at(-1)!.at - first.at) / (row.length - 1)];
    const next = sorted.find((place) => Math.abs(place.at - last.at - pitch) < MISS * pitch && areAlike(last, place));
    if (!next) return row;
    row.push(next);
  }
}

/** The rectangle around all pins of some rows. */
export function aroundRows(rows: readonly PinRow[]): Patch {
  const pins = rows.flatMap((row) => row.pins);
  return {
    left: Math.min(...pins.map(({ left }) => left)),
    top: Math.min(...pins.map(({ top }) => top)),
    right: Math.max(...pins.map(({ right }) => right)),
    bottom: Math.max(...pins.map(({ bottom }) => bottom)),
  };
}

/** Farthest that two rows of one part lie apart, mm. */
const ACROSS_MM = 16;

/** Pairs of rows that face each other over the same stretch, as those of a chip do. */
export function facingRows(rows: readonly PinRow[], perMm: number): [PinRow, PinRow][] {
  return rows.flatMap((a, i) => rows.slice(i + 1).flatMap((b): [PinRow, PinRow][] => (areFacing(a, b, perMm) ? [[a, b]] : [])));
}

function areFacing(a: PinRow, b: PinRow, perMm: number): boolean {
  if (a.along !== b.along || Math.abs(a.pitch - b.pitch) > MISS * Math.min(a.pitch, b.pitch)) return false;
  const [first, second] = [aroundRows([a]), aroundRows([b])];
  const [from, to, acrossA, acrossB] =
    a.along === 'x'
      ? [Math.max(first.left, second.left), Math.min(first.right, second.right), first.top, second.top]
      : [Math.max(first.top, second.top), Math.min(first.bottom, second.bottom), first.left, second.left];
  const length = (row: PinRow): number => row.pitch * row.pins.length;
  const apart = Math.abs(acrossA - acrossB);
  return to - from > 0.7 * Math.max(length(a), length(b)) && apart > a.pitch && apart < ACROSS_MM * perMm;
}
