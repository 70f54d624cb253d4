import { splitMinor } from '../quantity/index.ts';
import { BooksError } from './books-error.ts';

/** So many alike things that came at one price; `costMinor` is for all of them together. */
export interface Layer {
  readonly count: number;
  readonly costMinor: number;
}

export interface Taken {
  /** How many could be taken: fewer than asked for when the layers hold fewer. */
  readonly count: number;
  /** What they cost, in whole minor units. */
  readonly costMinor: number;
  /** What is left, oldest first: a new list. */
  readonly rest: Layer[];
}

/**
 * `count` things taken from the oldest layers first. What is taken and what is left add up to what was there, to the
 * penny: a layer that is broken is split in proportion, largest remainder.
 * First in, first out: one of the cost formulas of IAS 2 Inventories, paragraphs 25 and 27 (from memory).
 */
export function takeFifo(layers: readonly Layer[], count: number): Taken {
  if (!Number.isSafeInteger(count) || count < 0) throw new BooksError('bad-count', `a whole number of things can be taken, not ${count}`);
  let left = count;
  let costMinor = 0;
  let whole = 0;
  while (whole < layers.length && layers[whole]!.count <= left) {
    left -= layers[whole]!.count;
    costMinor += layers[whole]!.costMinor;
    whole += 1;
  }
  const rest = layers.slice(whole);
  const broken = rest[0];
  if (!broken || left === 0) return { count: count - left, costMinor, rest };
  const cost = splitMinor(broken.costMinor, [left, broken.count - left])[0]!;
  rest[0] = { count: broken.count - left, costMinor: broken.costMinor - cost };
  return { count, costMinor: costMinor + cost, rest };
}

/** All that the layers cost together. */
export const layersCost = (layers: readonly Layer[]): number => layers.reduce((sum, layer) => sum + layer.costMinor, 0);
