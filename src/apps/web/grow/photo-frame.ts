import { mmPerPx } from '../../../core/fit/index.ts';
import type { Frame, Place } from '../board/frame.ts';
import type { Spot } from '../fit/photo-marks.ts';
import type { Side } from './editor-part.ts';

/** What a person has marked on the photo of one side, px of the picture. */
export interface PhotoMarks {
  /** Size of the picture on which the marks were made, px. */
  readonly size: readonly [w: number, h: number];
  /** Two points and how far apart they are. */
  readonly scale: { readonly from: Spot; readonly to: Spot; readonly mm: number } | null;
  /** Front only: the lower left, lower right and upper left corner of the board. */
  readonly corners: readonly Spot[];
  /** Back only: the same holes on both pictures. */
  readonly pairs: readonly { readonly front: Spot; readonly back: Spot }[];
}

/**
 * From px to mm of the board as complex numbers, x + iy. The front photo is seen from above with y down: mm = a·conj(px) + b. The back photo is
 * seen from behind, mirrored once more, which leaves a turn: mm = a·px + b.
 */
export interface PhotoFrame {
  readonly side: Side;
  readonly a: Place;
  readonly b: Place;
}

const times = (p: Place, q: Place): Place => ({ x: p.x * q.x - p.y * q.y, y: p.x * q.y + p.y * q.x });
const plus = (p: Place, q: Place): Place => ({ x: p.x + q.x, y: p.y + q.y });
const minus = (p: Place, q: Place): Place => ({ x: p.x - q.x, y: p.y - q.y });
const conj = (p: Place): Place => ({ x: p.x, y: -p.y });
const meanOf = (places: readonly Place[]): Place => ({
  x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
  y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
});

/** Where a pixel of the photo lies on the board, mm. */
export function onBoard({ side, a, b }: PhotoFrame, px: Spot): Place {
  return plus(times(a, side === 'front' ? conj(px) : px), b);
}

/** Which pixel of the photo shows a place of the board. */
export function onPhoto({ side, a, b }: PhotoFrame, mm: Place): Spot {
  const square = a.x * a.x + a.y * a.y;
  const px = times({ x: a.x / square, y: -a.y / square }, minus(mm, b));
  return side === 'front' ? conj(px) : px;
}

/** The frame of the front photo: its scale, and the lower edge of the board where its corners are marked; else the photo itself is the board. */
export function frontFrame({ size, scale, corners }: PhotoMarks): PhotoFrame | null {
  const mm = mmOfPixel(scale);
  if (mm === null) return null;
  const [corner = { x: 0, y: size[1] }, along] = corners;
  const edge = along ? conj(minus(along, corner)) : { x: 1, y: 0 };
  const length = Math.hypot(edge.x, edge.y);
  if (length === 0) return null;
  const a = { x: (mm * edge.x) / length, y: (-mm * edge.y) / length };
  const b = times(a, conj(corner));
  return { side: 'front', a, b: { x: -b.x, y: -b.y } };
}

function mmOfPixel(scale: PhotoMarks['scale']): number | null {
  if (scale === null || !(scale.mm > 0)) return null;
  const { from, to, mm } = scale;
  return from.x === to.x && from.y === to.y ? null : mmPerPx({ fromPx: [from.x, from.y], toPx: [to.x, to.y], apartMm: mm });
}

/** Width and height of the board in mm: by its corners, else the whole photo. */
export function boardSize(front: PhotoFrame, { size, corners }: PhotoMarks): { width: number; height: number } {
  const [, right, up] = corners;
  const mm = Math.hypot(front.a.x, front.a.y);
  return {
    width: right ? onBoard(front, right).x : size[0] * mm,
    height: up ? onBoard(front, up).y : size[1] * mm,
  };
}

/**
 * The frame of the back photo that lays its holes over those of the front: the similarity of least squares (Umeyama 1991, for the plane as one complex
 * division). One pair needs the scale of the back and takes the photo as upright; null where that is not enough.
 */
export function backFrame(front: PhotoFrame, { scale, pairs }: PhotoMarks): PhotoFrame | null {
  const [places, pixels] = [pairs.map((pair) => onBoard(front, pair.front)), pairs.map((pair) => pair.back)];
  if (pairs.length === 0) return null;
  const [placeMean, pixelMean] = [meanOf(places), meanOf(pixels)];
  const spread = pixels.reduce((sum, px) => sum + Math.hypot(px.x - pixelMean.x, px.y - pixelMean.y) ** 2, 0);
  const mm = mmOfPixel(scale);
  if (spread === 0 && mm === null) return null;
  const cross = places.map((place, i) => times(minus(place, placeMean), conj(minus(pixels[i]!, pixelMean)))).reduce(plus);
  const a = spread === 0 ? { x: -mm!, y: 0 } : { x: cross.x / spread, y: cross.y / spread };
  return a.x === 0 && a.y === 0 ? null : { side: 'back', a, b: minus(placeMean, times(a, pixelMean)) };
}

/** How far the holes of the two photos miss each other at worst once laid over each other, mm. */
export const worstMiss = (front: PhotoFrame, back: PhotoFrame, pairs: PhotoMarks['pairs']): number =>
  Math.max(
    0,
    ...pairs.map((pair) => {
      const off = minus(onBoard(front, pair.front), onBoard(back, pair.back));
      return Math.hypot(off.x, off.y);
    }),
  );

/** The photo laid under the picture of a board: the six numbers of an SVG matrix from px to mm of the picture. */
export function photoMatrix(photo: PhotoFrame, frame: Frame): readonly number[] {
  const at = (px: Spot): Place => {
    const { x, y } = onBoard(photo, px);
    return { x: frame.side === 'front' ? x : frame.width - x, y: frame.height - y };
  };
  const [zero, right, down] = [at({ x: 0, y: 0 }), at({ x: 1, y: 0 }), at({ x: 0, y: 1 })];
  return [right.x - zero.x, right.y - zero.y, down.x - zero.x, down.y - zero.y, zero.x, zero.y];
}
