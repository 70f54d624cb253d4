import type { Point } from '../align/four-point-map.ts';
import { composed, inverted, mapped } from '../align/homography.ts';
import type { Homography } from '../picture-library.ts';
import { VisionError } from '../vision-error.ts';
import { cross, growthAt, projectiveOf, similarityOf, type PointPair } from './fit-map.ts';

/** A mark of known place: on the board in mm (x to the right, y up, seen on the front) and where it is seen in the photo, px from the upper left. */
export interface MarkPair {
  readonly name: string;
  readonly boardMm: Point;
  readonly photoPx: Point;
}

export type BoardSide = 'front' | 'back';

/** Where the board lies in a photo. */
export interface Registration {
  readonly ok: true;
  /** Turn, size and place only (two or three marks: a photo from straight above), or perspective as well (four marks and more). */
  readonly kind: 'similarity' | 'homography';
  readonly toPhoto: Homography;
  readonly toBoard: Homography;
  /** How far each mark lies from where the map puts it, mm on the board, in the order of the marks. */
  readonly residuals: readonly { readonly name: string; readonly mm: number }[];
  /** Standard error of a mark's place, mm: null with two or four marks, which no further one checks. */
  readonly spreadMm: number | null;
  /** The marks' greatest extent on the board, mm. */
  readonly spanMm: number;
  /** Pixels of the photo to a millimetre, at the middle of the marks. */
  readonly pxPerMm: number;
}

/** Why marks give no place, with the marks that are to blame. */
export type RegistrationRefusal =
  | { readonly ok: false; readonly code: 'too-few-marks'; readonly given: number }
  | { readonly ok: false; readonly code: 'marks-together'; readonly names: readonly [string, string] }
  | { readonly ok: false; readonly code: 'marks-in-line' }
  | { readonly ok: false; readonly code: 'other-side' }
  | { readonly ok: false; readonly code: 'too-slanted'; readonly times: number }
  | { readonly ok: false; readonly code: 'mark-does-not-fit'; readonly name: string; readonly mm: number; readonly allowedMm: number };

/** What is asked of marks: distance from each other, error on the board (mm and share of their span), and how much larger the near end may be seen than the far one. */
export const MARK_LIMITS = { apartMm: 1, apartPx: 8, offMm: 0.8, offShare: 0.02, slant: 1.6 };

/**
 * Where the board of a photo lies, by marks of known place (fiducials, mounting holes, parts): two or three give turn, size and place, four and more a perspective as
 * well. The lens is not modelled. Throws `bad-parameter` for a coordinate that is no number.
 */
export function register(marks: readonly MarkPair[], side: BoardSide): Registration | RegistrationRefusal {
  if (marks.some(({ boardMm, photoPx }) => ![...boardMm, ...photoPx].every(Number.isFinite)))
    throw new VisionError('bad-parameter', 'a mark needs finite coordinates');
  if (marks.length < 2) return { ok: false, code: 'too-few-marks', given: marks.length };
  const together = marksTogether(marks);
  if (together) return { ok: false, code: 'marks-together', names: together };
  const fit = fitted(marks, side);
  return fit.ok ? checked(marks, side, fit) : fit;
}

/** The board as it is seen: y down, and left for right on the back. */
const seenFrom = (side: BoardSide): Homography => [side === 'front' ? 1 : -1, 0, 0, 0, -1, 0, 0, 0, 1];

function marksTogether(marks: readonly MarkPair[]): [string, string] | undefined {
  const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  for (const [i, a] of marks.entries())
    for (const b of marks.slice(0, i))
      if (apart(a.boardMm, b.boardMm) < MARK_LIMITS.apartMm || apart(a.photoPx, b.photoPx) < MARK_LIMITS.apartPx) return [b.name, a.name];
  return undefined;
}

type Fitted = Pick<Registration, 'ok' | 'kind' | 'toPhoto' | 'toBoard'>;

function fitted(marks: readonly MarkPair[], side: BoardSide): Fitted | RegistrationRefusal {
  const flip = seenFrom(side);
  const pairs = marks.map(({ boardMm, photoPx }): PointPair => ({ from: mapped(flip, ...boardMm), to: photoPx }));
  const kind = marks.length >= 4 ? 'homography' : 'similarity';
  if (marks.length >= 3 && isMirrored(pairs)) return { ok: false, code: 'other-side' };
  if (kind === 'homography' && areInLine(pairs.map(({ from }) => from))) return { ok: false, code: 'marks-in-line' };
  const fit = kind === 'homography' ? projectiveOf(pairs) : similarityOf(pairs);
  const toPhoto = fit && composed(fit, flip);
  const toBoard = toPhoto && inverted(toPhoto);
  if (!toPhoto || !toBoard) return { ok: false, code: 'marks-in-line' };
  const growths = pairs.map(({ from }) => growthAt(fit, from));
  const times = Math.sqrt(Math.max(...growths) / Math.min(...growths));
  if (!(Math.min(...growths) > 0) || times > MARK_LIMITS.slant) return { ok: false, code: 'too-slanted', times };
  return { ok: true, kind, toPhoto, toBoard };
}

/** Whether the widest triangle of the marks runs round the other way in the photo. Marks in a line run neither way. */
function isMirrored(pairs: readonly PointPair[]): boolean {
  let widest = 0;
  let inPhoto = 0;
  for (const a of pairs)
    for (const b of pairs)
      for (const c of pairs) {
        const area = cross(a.from, b.from, c.from);
        if (Math.abs(area) > Math.abs(widest)) [widest, inPhoto] = [area, cross(a.to, b.to, c.to)];
      }
  return widest * inPhoto < 0;
}

/** Whether four of the points do not span the plane twice over: without some one of them, the rest is nearly a line. */
function areInLine(points: readonly Point[]): boolean {
  const span = Math.max(...points.map(([x, y]) => Math.hypot(x - points[0]![0], y - points[0]![1])));
  return points.some((_, without) => {
    const rest = points.filter((__, i) => i !== without);
    const areas = rest.flatMap((a) => rest.flatMap((b) => rest.map((c) => Math.abs(cross(a, b, c)))));
    return Math.max(...areas) < 0.05 * span * span;
  });
}

function checked(marks: readonly MarkPair[], side: BoardSide, fit: Fitted): Registration | RegistrationRefusal {
  const residuals = residualsOf(marks, fit.toBoard);
  const [xs, ys] = [0, 1].map((k) => marks.map(({ boardMm }) => boardMm[k]!)) as [number[], number[]];
  const middle: Point = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  const span = Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const allowedMm = Math.max(MARK_LIMITS.offMm, MARK_LIMITS.offShare * span);
  if (residuals.some(({ mm }) => mm > allowedMm))
    return { ok: false, code: 'mark-does-not-fit', ...worstOf(marks, side, residuals), allowedMm };
  const free = 2 * marks.length - (fit.kind === 'homography' ? 8 : 4);
  const spreadMm = free > 0 ? Math.sqrt(residuals.reduce((sum, { mm }) => sum + mm * mm, 0) / free) : null;
  return { ...fit, residuals, spreadMm, spanMm: span, pxPerMm: Math.sqrt(Math.abs(growthAt(fit.toPhoto, middle))) };
}

const residualsOf = (marks: readonly MarkPair[], toBoard: Homography): { name: string; mm: number }[] =>
  marks.map(({ name, boardMm, photoPx }) => {
    const [x, y] = mapped(toBoard, ...photoPx);
    return { name, mm: Math.hypot(x - boardMm[0], y - boardMm[1]) };
  });

/** The mark that the others do not bear out: where enough are left without it, the one whose absence makes the rest agree best; else the one furthest off. */
function worstOf(
  marks: readonly MarkPair[],
  side: BoardSide,
  residuals: readonly { readonly name: string; readonly mm: number }[],
): { name: string; mm: number } {
  const furthest = residuals.reduce((a, b) => (b.mm > a.mm ? b : a));
  if (marks.length < 6) return furthest;
  let least = Infinity;
  let worst = furthest;
  for (const [i, mark] of marks.entries()) {
    const rest = marks.filter((_, k) => k !== i);
    const fit = fitted(rest, side);
    if (!fit.ok) continue;
    const left = Math.max(...residualsOf(rest, fit.toBoard).map(({ mm }) => mm));
    if (left < least) [least, worst] = [left, residualsOf([mark], fit.toBoard)[0]!];
  }
  return worst;
}
