import type { Patch } from '../colour/white-balance.ts';
import type { ProposedOutline } from './propose-outlines.ts';

/** A word that was read on a photo, px of the photo; how sure its reader is, 0..1. */
export interface ReadWord {
  readonly text: string;
  readonly box: Patch;
  readonly sure: number;
}

/** What a part's reference looks like on a board: one to three letters and a number. */
const REFERENCE = /^[A-Z]{1,3}\d{1,3}$/;
/** A reader that is less sure is wrong too often (tuned on one invented board). */
const LEAST_SURE = 0.75;
/** Print belongs to a part no farther off than this, mm. */
const REACH_MM = 2;
/** Print stands at the middle of its part: how much the distance of the middles counts beside the gap. */
const MIDDLES = 0.25;

/**
 * For each outline the reference that is printed beside it, or null: of all pairs of a word and a part the nearest first, each once. Print inside an outline is what the part
 * says of itself, and names nothing.
 */
export function referencesBeside(outlines: readonly ProposedOutline[], words: readonly ReadWord[], pxPerMm: number): (string | null)[] {
  const named: (string | null)[] = outlines.map(() => null);
  const references = words.filter(({ text, sure }) => sure >= LEAST_SURE && REFERENCE.test(text));
  const pairs = references
    .filter(({ box }) => !outlines.some((outline) => isWithin(box, outline.box)))
    .flatMap(({ text, box }) =>
      outlines.map((outline, k) => ({ text, k, gap: gapBetween(box, outline.box), apart: apartOf(box, outline.box) })),
    )
    .filter(({ k, gap }) => outlines[k]!.kind !== 'hole' && gap <= REACH_MM * pxPerMm)
    .sort((a, b) => a.gap + MIDDLES * a.apart - b.gap - MIDDLES * b.apart);
  const used = new Set<string>();
  for (const { text, k } of pairs) {
    if (named[k] !== null || used.has(text)) continue;
    named[k] = text;
    used.add(text);
  }
  return named;
}

function isWithin(word: Patch, { left, top, right, bottom }: Patch): boolean {
  const [x, y] = [(word.left + word.right) / 2, (word.top + word.bottom) / 2];
  return x > left && x < right && y > top && y < bottom;
}

const apartOf = (a: Patch, b: Patch): number => Math.hypot(a.left + a.right - b.left - b.right, a.top + a.bottom - b.top - b.bottom) / 2;

const gapBetween = (a: Patch, b: Patch): number =>
  Math.hypot(Math.max(0, a.left - b.right, b.left - a.right), Math.max(0, a.top - b.bottom, b.top - a.bottom));
