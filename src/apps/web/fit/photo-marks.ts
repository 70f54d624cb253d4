import type { MarkedPad, PadKind, PhotoScale } from '../../../core/fit/index.ts';

/** A place on a photo, px from its upper left. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What a click means: an end of the known distance, a corner of a pad, or the middle of the first or last pad of a row. */
export type Tool = 'scale' | 'pad' | 'row';

export interface Marks {
  /** Ends of a distance that is known; two when it can be used. */
  readonly scale: readonly Spot[];
  /** Clicked, and waiting for the second click. */
  readonly pending: readonly Spot[];
  readonly pads: readonly MarkedPad[];
}

export interface Brush {
  readonly tool: Tool;
  readonly kind: PadKind;
  readonly round: boolean;
  /** Pads of a row, its first and last one included. */
  readonly count: number;
}

export const NO_MARKS: Marks = { scale: [], pending: [], pads: [] };

/** A click is taken as good to so many pixels of the photo. */
export const CLICK_PX = 1;

/** The marks after one more click. A third end of the scale begins it anew; the second click of a pad or a row makes it. */
export function marked(marks: Marks, spot: Spot, brush: Brush): Marks {
  if (brush.tool === 'scale') return { ...marks, scale: marks.scale.length < 2 ? [...marks.scale, spot] : [spot] };
  const [first] = marks.pending;
  if (!first) return { ...marks, pending: [spot] };
  const made =
    brush.tool === 'pad' ? [...marks.pads, padBetween(first, spot, brush, nextPin(marks.pads))] : withRow(marks.pads, first, spot, brush);
  return { ...marks, pending: [], pads: made };
}

/** The pin after the highest number so far. */
export function nextPin(pads: readonly MarkedPad[]): string {
  return String(Math.max(0, ...pads.map(({ name }) => (/^\d+$/.test(name) ? Number(name) : 0))) + 1);
}

const padBetween = (a: Spot, b: Spot, { kind, round }: Brush, name: string): MarkedPad => ({
  name: kind === 'peg' ? '' : name,
  kind,
  round,
  xPx: (a.x + b.x) / 2,
  yPx: (a.y + b.y) / 2,
  wPx: Math.max(1, Math.abs(a.x - b.x)),
  hPx: Math.max(1, Math.abs(a.y - b.y)),
});

/** A row of pads as large as the last one; where the row begins on that one, it is the first of the row. */
function withRow(pads: readonly MarkedPad[], from: Spot, to: Spot, { count }: Brush): readonly MarkedPad[] {
  const like = pads.at(-1);
  if (!like) return pads;
  const starts = Math.abs(from.x - like.xPx) <= like.wPx / 2 && Math.abs(from.y - like.yPx) <= like.hPx / 2;
  const before = starts ? pads.slice(0, -1) : pads;
  const first = Number(starts && /^\d+$/.test(like.name) ? like.name : nextPin(before));
  const begin = starts ? { x: like.xPx, y: like.yPx } : from;
  const row = Array.from({ length: Math.max(2, count) }, (_, i): MarkedPad => {
    const share = i / (Math.max(2, count) - 1);
    const name = like.kind === 'peg' ? '' : String(first + i);
    return { ...like, name, xPx: begin.x + share * (to.x - begin.x), yPx: begin.y + share * (to.y - begin.y) };
  });
  return [...before, ...row];
}

/** The last mark moved: the end of the scale, a click that waits for its second, or else the last pad. */
export function nudged(marks: Marks, by: Spot, tool: Tool): Marks {
  const moved = (spots: readonly Spot[]): Spot[] =>
    spots.map((spot, i) => (i === spots.length - 1 ? { x: spot.x + by.x, y: spot.y + by.y } : spot));
  if (tool === 'scale') return { ...marks, scale: moved(marks.scale) };
  if (marks.pending.length > 0) return { ...marks, pending: moved(marks.pending) };
  const last = marks.pads.length - 1;
  return { ...marks, pads: marks.pads.map((pad, i) => (i === last ? { ...pad, xPx: pad.xPx + by.x, yPx: pad.yPx + by.y } : pad)) };
}

/** Without the last mark. */
export function undone(marks: Marks, tool: Tool): Marks {
  if (tool === 'scale') return { ...marks, scale: marks.scale.slice(0, -1) };
  return marks.pending.length > 0 ? { ...marks, pending: [] } : { ...marks, pads: marks.pads.slice(0, -1) };
}

/** The scale, once both ends lie apart and the distance is known. */
export function scaleOf({ scale }: Marks, apartMm: number): PhotoScale | null {
  const [from, to] = scale;
  if (!from || !to || !(apartMm > 0) || (from.x === to.x && from.y === to.y)) return null;
  return { fromPx: [from.x, from.y], toPx: [to.x, to.y], apartMm };
}

/** By how much the scale may be off when both of its ends may be off by a click, as a share. */
export const scaleError = ({ fromPx, toPx }: PhotoScale): number =>
  (Math.SQRT2 * CLICK_PX) / Math.hypot(toPx[0] - fromPx[0], toPx[1] - fromPx[1]);
