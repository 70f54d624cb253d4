import type { Point, Quad } from '../align/four-point-map.ts';
import type { Patch } from '../colour/white-balance.ts';
import type { Pixels } from '../image/plane.ts';
import { chanceOf, logOddsOf, type BoostedTrees } from '../ranking/boosted-trees.ts';
import { VisionError } from '../vision-error.ts';
import { groundOf } from './board-ground.ts';
import { kindOf, type OutlineKind } from './outline-kind.ts';
import { OUTLINE_RANKER } from './outline-numbers.ts';
import type { PinRow } from './pin-rows.ts';
import { evidenceOf, featuresOf } from './rectangle-features.ts';
import { candidatesOf, type Candidates } from './rectangles.ts';
import { WORKING_PER_MM, workingPicture } from './working-picture.ts';

/** A thing that a photo of a board shows, for a person to accept, correct or wave away. All places in px of the photo, borders of pixels at whole numbers. */
export interface ProposedOutline {
  readonly kind: OutlineKind;
  readonly box: Patch;
  /** Its corners, from the upper left clockwise. */
  readonly outline: Quad;
  /** Chance that something stands there whose outline meets this one. */
  readonly chance: number;
  /** Rows of pins in it, longest first: the middle of each pin. */
  readonly rows: readonly (readonly Point[])[];
}

export type OutlineAnswer =
  | { readonly ok: true; readonly outlines: readonly ProposedOutline[] }
  | { readonly ok: false; readonly code: 'too-coarse'; readonly pxPerMm: number; readonly neededPxPerMm: number }
  | { readonly ok: false; readonly code: 'too-large'; readonly widthMm: number; readonly heightMm: number; readonly mostMm: number }
  | { readonly ok: false; readonly code: 'stopped' };

export interface OutlineOptions {
  /** Where the board lies in the photo, px; the whole photo where nothing is said. */
  readonly board?: Patch;
  /** Proposals less likely than this are left out. */
  readonly leastChance?: number;
  readonly ranker?: BoostedTrees;
  readonly shouldStop?: () => boolean;
}

/** The chance from which on an outline is proposed by itself. */
export const LEAST_CHANCE = 0.5;
/** Photos with fewer pixels to a millimetre show a small chip as a smear. */
export const NEEDED_PX_PER_MM = 6;
/** The longest side of what is looked at. */
export const MOST_MM = 320;
/** How far light is followed over the bare board, mm. */
const LIGHT_MM = 4;
/** Of two outlines that share this much of the smaller one, the likelier stays. */
const SHARED = 0.35;

/**
 * What stands on a board by one photo from above, likeliest first: parts, rows of pins, round test points and holes, by candidates that stand out from the bare board
 * and a ranker learned on drawn boards. The photo is looked at along its own axes: parts that stand askew by more than about 15° are found badly. Throws `bad-parameter` for a scale that is none.
 */
export function proposeOutlines(pixels: Pixels, pxPerMm: number, options: OutlineOptions = {}): OutlineAnswer {
  if (!(pxPerMm > 0 && Number.isFinite(pxPerMm)))
    throw new VisionError('bad-parameter', `a scale must be above zero, got ${pxPerMm} px/mm`);
  if (pxPerMm < NEEDED_PX_PER_MM) return { ok: false, code: 'too-coarse', pxPerMm, neededPxPerMm: NEEDED_PX_PER_MM };
  const [widthMm, heightMm] = [pixels.width / pxPerMm, pixels.height / pxPerMm];
  if (Math.max(widthMm, heightMm) > MOST_MM) return { ok: false, code: 'too-large', widthMm, heightMm, mostMm: MOST_MM };
  const judged = judgedCandidates(pixels, pxPerMm, options);
  if (!judged) return { ok: false, code: 'stopped' };
  const { candidates, chances, toPhoto } = judged;
  const chosen = likeliest(candidates, chances, options.leastChance ?? LEAST_CHANCE);
  const rounds = candidates.rectangles.flatMap(({ round }) => (round ? [round] : []));
  const outlines = chosen.map((k): ProposedOutline => {
    const rectangle = candidates.rectangles[k]!;
    const rows = rowsWithin(candidates.rows, rectangle);
    const kind = kindOf(rectangle, rows, rounds, WORKING_PER_MM);
    const box = grownBy(rectangle, toPhoto);
    return {
      kind,
      box,
      outline: cornersOf(box),
      chance: chances[k]!,
      rows: rows.map((row) => row.pins.map((pin) => middleOf(grownBy(pin, toPhoto)))),
    };
  });
  return { ok: true, outlines };
}

/** A photo's candidates and what the ranker gives each; null where it was told to stop. Also what learning starts from. */
export function judgedCandidates(
  pixels: Pixels,
  pxPerMm: number,
  { board, ranker = OUTLINE_RANKER, shouldStop = () => false }: OutlineOptions,
): { candidates: Candidates; features: Float32Array[]; chances: number[]; toPhoto: number } | null {
  const { picture, toPhoto } = workingPicture(pixels, pxPerMm);
  const seen = grownBy(board ?? { left: 0, top: 0, right: pixels.width, bottom: pixels.height }, 1 / toPhoto);
  const ground = groundOf(picture, seen, LIGHT_MM * WORKING_PER_MM);
  if (shouldStop()) return null;
  const candidates = candidatesOf(ground, seen, WORKING_PER_MM);
  if (shouldStop()) return null;
  const evidence = evidenceOf(ground, WORKING_PER_MM);
  const features = candidates.rectangles.map((rectangle) => featuresOf(rectangle, evidence));
  return { candidates, features, chances: features.map((row) => chanceOf(logOddsOf(ranker, row))), toPhoto };
}

/** Indices of the likeliest candidates that do not lie on one another. */
function likeliest({ rectangles }: Candidates, chances: readonly number[], least: number): number[] {
  const kept: number[] = [];
  const order = [...chances.keys()].filter((k) => chances[k]! >= least).sort((a, b) => chances[b]! - chances[a]!);
  for (const k of order) if (!kept.some((other) => shareOfSmaller(rectangles[k]!, rectangles[other]!) > SHARED)) kept.push(k);
  return kept;
}

function shareOfSmaller(a: Patch, b: Patch): number {
  const w = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const h = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return w > 0 && h > 0 ? (w * h) / Math.min(areaOf(a), areaOf(b)) : 0;
}

const areaOf = ({ left, top, right, bottom }: Patch): number => (right - left) * (bottom - top);

/** The rows whose pins lie in a rectangle, longest first; of rows that share a pin only the longest. */
function rowsWithin(rows: readonly PinRow[], box: Patch): PinRow[] {
  const inside = rows
    .filter(({ pins }) => pins.every((pin) => shareOfSmaller(pin, box) > 0.5))
    .sort((a, b) => b.pins.length - a.pins.length);
  const kept: PinRow[] = [];
  for (const row of inside)
    if (!kept.some((other) => row.pins.some((pin) => other.pins.some((theirs) => shareOfSmaller(pin, theirs) > SHARED)))) kept.push(row);
  return kept;
}

const grownBy = ({ left, top, right, bottom }: Patch, times: number): Patch => ({
  left: left * times,
  top: top * times,
  right: right * times,
  bottom: bottom * times,
});

const middleOf = ({ left, top, right, bottom }: Patch): Point => [(left + right) / 2, (top + bottom) / 2];

const cornersOf = ({ left, top, right, bottom }: Patch): Quad => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];
