import type { DeviceModel } from './model.ts';

/**
 * The hidden states of a unit: no fault, each single fault, each pair, and last "something that is not in the model". A state
 * is a number; the tables tell what it holds.
 */
export interface StateSpace {
  readonly size: number;
  readonly faults: number;
  /** Faults of each state as indexes into `model.faults`; empty for "nothing" and for "unknown". */
  readonly members: readonly (readonly number[])[];
  /** The same as tables: lower and higher fault of each state, −1 where there is none. */
  readonly first: Int16Array;
  readonly second: Int16Array;
  readonly none: number;
  readonly unknown: number;
  /** State of a set of at most two faults. */
  indexOf(a?: number, b?: number): number;
}

/** States of a model with n faults: 1 + n + n(n−1)/2 + 1. */
export function stateSpace(model: DeviceModel): StateSpace {
  const n = model.faults.length;
  const members: number[][] = [[]];
  for (let a = 0; a < n; a++) members.push([a]);
  const pairStart = members.length;
  for (let a = 0; a < n; a++) for (let b = a + 1; b < n; b++) members.push([a, b]);
  const unknown = members.length;
  members.push([]);
  const pairIndex = (low: number, high: number): number => pairStart + low * n - (low * (low + 1)) / 2 + (high - low - 1);
  const indexOf = (a?: number, b?: number): number => {
    if (a === undefined) return 0;
    if (b === undefined || a === b) return 1 + a;
    return a < b ? pairIndex(a, b) : pairIndex(b, a);
  };
  const first = Int16Array.from(members, ([a]) => a ?? -1);
  const second = Int16Array.from(members, ([, b]) => b ?? -1);
  return { size: members.length, faults: n, members, first, second, none: 0, unknown, indexOf };
}

/** For each state the product of a factor of each of its faults; 1 for "nothing" and for "unknown". */
export function productByState({ size, first, second }: StateSpace, byFault: Float64Array): Float64Array {
  const product = new Float64Array(size).fill(1);
  for (let s = 0; s < size; s++) {
    if (first[s]! >= 0) product[s]! *= byFault[first[s]!]!;
    if (second[s]! >= 0) product[s]! *= byFault[second[s]!]!;
  }
  return product;
}

/** Chance of each fault under weights by state. */
export function faultChances({ size, faults, first, second }: StateSpace, weights: Float64Array): Float64Array {
  const chances = new Float64Array(faults);
  for (let s = 0; s < size; s++) {
    if (first[s]! >= 0) chances[first[s]!]! += weights[s]!;
    if (second[s]! >= 0) chances[second[s]!]! += weights[s]!;
  }
  return chances;
}
