import type { Features } from './sale.ts';

/** What is thought of prices before any sale is known: a normal belief in each coefficient of the logarithm of the price. */
export interface PricePrior {
  /** Typical price of one in condition B, complete and original, minor units. */
  readonly typicalMinor: number;
  /** Standard deviation of the logarithm of that typical price: how sure one is of it. */
  readonly typicalSpread: number;
  /** Standard deviation of the logarithm of single prices around what their features say. */
  readonly saleSpread: number;
  /** Sales that the belief in `saleSpread` weighs. */
  readonly saleSpreadWeight: number;
}

/** A prior as weak as two sales around a typical price. Common practice, no source. */
export const weakPrior = (typicalMinor: number, saleSpread: number): PricePrior => ({
  typicalMinor,
  typicalSpread: saleSpread / Math.SQRT2,
  saleSpread,
  saleSpreadWeight: 4,
});

/** Mean and standard deviation of the effect on the logarithm of the price. Common practice, no source. */
export const EFFECTS = {
  /** One grade worse, from A to D. */
  grade: { mean: -0.15, spread: 0.1 },
  /** For parts, against D. */
  parts: { mean: -0.9, spread: 0.4 },
  /** All of what belongs to it, against nothing. */
  complete: { mean: 0.12, spread: 0.12 },
  /** Its own screen and shell, against others. */
  original: { mean: 0.12, spread: 0.12 },
} as const;

const GRADE_STEPS = { A: -1, B: 0, C: 1, D: 2, parts: 2 } as const;
/** Where it is not said, things are mostly sold with what they have and as they were made. */
const NOT_SAID = 0.7;

/** The row of a thing: constant, grades below B, for parts, lack of completeness, lack of originality. */
export const rowOf = ({ condition, complete, original }: Features): number[] => [
  1,
  GRADE_STEPS[condition],
  condition === 'parts' ? 1 : 0,
  (complete ?? NOT_SAID) - 1,
  (original ?? NOT_SAID) - 1,
];

/** Mean and standard deviation of each coefficient, in the order of `rowOf`. */
export const coefficientsBefore = (prior: PricePrior): readonly { readonly mean: number; readonly spread: number }[] => [
  { mean: Math.log(prior.typicalMinor), spread: prior.typicalSpread },
  EFFECTS.grade,
  EFFECTS.parts,
  EFFECTS.complete,
  EFFECTS.original,
];
