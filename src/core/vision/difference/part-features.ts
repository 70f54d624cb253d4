import { bounded, type Component } from '../image/components.ts';
import { partAt, type PartPatch } from './part-patch.ts';
import type { FoundPart } from './settle-parts.ts';

/** What the ranker sees besides `FEATURES` where parts are known, in this order. */
export const PART_FEATURES = [
  'is_on_part',
  'part_long_px',
  'part_short_px',
  'part_as_it_lies',
  'part_best',
  'part_shift_px',
  'part_shift_of_short',
  'part_turn_deg',
  'part_share',
  'part_beside',
  'part_stray_px',
  'around_shift_px',
  'is_part_itself',
] as const;

/** The row of part features where nothing is known of parts. */
export const NO_PART: readonly number[] = [0, 0, 0, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0];

/** The part under a candidate: the one that its middle is on, else the smallest that holds half of it. */
export function partUnder(found: readonly FoundPart[], { left, top, right, bottom }: Component): FoundPart | undefined {
  const part = partAt(
    found.map((each) => each.part),
    (left + right) / 2,
    (top + bottom) / 2,
  );
  return found.find((each) => each.part === part);
}

/** The part features of a candidate; `isItself` where the candidate is a whole part that was not found again. */
export function partFeaturesOf(found: readonly FoundPart[], candidate: Component, isItself: boolean): number[] {
  const under = partUnder(found, candidate);
  const x = (candidate.left + candidate.right) / 2;
  const y = (candidate.top + candidate.bottom) / 2;
  const around = nearestShift(found, x, y, under?.part);
  if (!under) return NO_PART.with(PART_FEATURES.indexOf('around_shift_px'), Math.hypot(...around));
  const { part, fit } = under;
  const short = Math.min(part.widthPx, part.heightPx);
  const shift = Math.hypot(fit.dx, fit.dy);
  const stray = Math.hypot(fit.dx - around[0], fit.dy - around[1]);
  return [
    1,
    Math.max(part.widthPx, part.heightPx),
    short,
    fit.asItLies,
    fit.best,
    shift,
    shift / short,
    Math.abs(fit.turnDeg),
    candidate.pixels.length / (part.widthPx * part.heightPx),
    Math.hypot(x - part.x, y - part.y) / short,
    stray,
    Math.hypot(...around),
    Number(isItself),
  ];
}

const NEIGHBOURS = 5;

/** The middle shift of the nearest parts that were found well: what the place as a whole does. */
function nearestShift(found: readonly FoundPart[], x: number, y: number, but?: PartPatch): [number, number] {
  const near = found
    .filter(({ part, fit }) => part !== but && fit.best > 0.8 && Math.abs(fit.turnDeg) < 4)
    .map(({ part, fit }) => ({ fit, away: Math.hypot(part.x - x, part.y - y) }))
    .sort((a, b) => a.away - b.away)
    .slice(0, NEIGHBOURS);
  const middle = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
  return [middle(near.map(({ fit }) => fit.dx)), middle(near.map(({ fit }) => fit.dy))];
}

/** Below this a part is not found again as it was. */
const LOST_BELOW = 0.8;

/** Parts that were not found again as they were, each as a candidate of its own: its whole rectangle. */
export function lostParts(found: readonly FoundPart[], width: number, height: number, valid: Uint8Array): Component[] {
  return found
    .filter(({ fit }) => fit.asItLies < LOST_BELOW)
    .map(({ part }) => rectangle(part, width, height, valid))
    .filter(({ pixels }) => pixels.length > 8);
}

function rectangle({ x, y, widthPx, heightPx, turnDeg }: PartPatch, width: number, height: number, valid: Uint8Array): Component {
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const reach = Math.ceil(Math.hypot(widthPx, heightPx) / 2);
  const pixels: number[] = [];
  for (let py = Math.max(0, Math.floor(y - reach)); py <= Math.min(height - 1, y + reach); py++)
    for (let px = Math.max(0, Math.floor(x - reach)); px <= Math.min(width - 1, x + reach); px++) {
      const [u, v] = [px - x, py - y];
      const isInside = Math.abs(u * cos + v * sin) <= widthPx / 2 && Math.abs(-u * sin + v * cos) <= heightPx / 2;
      if (isInside && valid[py * width + px]) pixels.push(py * width + px);
    }
  return bounded(pixels, width);
}
