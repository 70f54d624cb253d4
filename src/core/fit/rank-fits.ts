import type { Answer, FitAnswer } from './answer.ts';
import { fitPart } from './fit-part.ts';
import type { Pattern } from './pattern.ts';

export interface RankedFit<T> {
  readonly part: T;
  readonly fit: FitAnswer;
}

const ORDER: readonly Answer[] = ['fits', 'fits-after-bending', 'cannot-say', 'does-not-line-up'];

/** How many lands of a part have enough below them, as a share. */
const covered = ({ pads }: FitAnswer): number =>
  pads.length === 0 ? 0 : pads.reduce((sum, { overlap }) => sum + Math.min(1, overlap), 0) / pads.length;

/**
 * Which of these parts go on a place, the best first: what fits, what fits after bending (least first), what has to be measured, what does not line up; within these
 * by what is covered, then as given. Stops when told to and gives those that were tried; `done` says whether it was all.
 */
export function rankFits<T extends { readonly pattern: Pattern }>(
  place: Pattern,
  parts: readonly T[],
  shouldStop: () => boolean = () => false,
): { readonly done: boolean; readonly fits: RankedFit<T>[] } {
  const fits: RankedFit<T>[] = [];
  for (const part of parts) {
    if (shouldStop()) break;
    fits.push({ part, fit: fitPart(part.pattern, place) });
  }
  const done = fits.length === parts.length;
  fits.sort(
    ({ fit: a }, { fit: b }) =>
      ORDER.indexOf(a.answer) - ORDER.indexOf(b.answer) ||
      a.bendMm - b.bendMm ||
      covered(b) - covered(a) ||
      b.leastOverlap - a.leastOverlap,
  );
  return { done, fits };
}
