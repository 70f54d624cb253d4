import type { Pair } from './pair-kernels.ts';

/** What is believed of a unit whose circuit is known. */
export interface ReadingBelief {
  /** Sets of faults, most likely first; the empty one is "nothing of the circuit is wrong". Sets far below a millionth are left out. */
  readonly sets: readonly { readonly faults: readonly string[]; readonly chance: number }[];
  readonly none: number;
  /** Chance of something that is not in the model. */
  readonly unknown: number;
  /** Chance of each fault, alone or with another. */
  readonly marginal: ReadonlyMap<string, number>;
  /** For each piece of evidence the chance that it is a slip, highest first. */
  readonly odd: readonly { readonly evidenceId: string; readonly slip: number }[];
  readonly weights: ReadingWeights;
}

/** The same as numbers, which sum to 1: what computes on from here. */
export interface ReadingWeights {
  readonly draws: number;
  /** By row (0 is none, 1 + i is fault i) and draw. */
  readonly rows: Float64Array;
  readonly pairs: readonly Pair[];
  /** By pair and draw. */
  readonly ofPairs: Float64Array;
  /** By draw. */
  readonly unknown: Float64Array;
}

export const sumOf = (values: Float64Array, from = 0, to = values.length): number => {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
};

/** Chance of each row with all its draws. */
export const rowChances = ({ draws, rows }: ReadingWeights): Float64Array =>
  Float64Array.from({ length: rows.length / draws }, (_, row) => sumOf(rows, row * draws, (row + 1) * draws));

export const pairChances = ({ draws, pairs, ofPairs }: ReadingWeights): Float64Array =>
  Float64Array.from(pairs, (_, k) => sumOf(ofPairs, k * draws, (k + 1) * draws));
