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
  /** Pairs that are thought of, where not all are. */
  readonly only?: readonly FaultPair[];
  /** The same as tables: lower and higher fault of each state, −1 where there is none. */
  readonly first: Int16Array;
  readonly second: Int16Array;
  readonly none: number;
  readonly unknown: number;
  /** State of a set of at most two faults; −1 for a pair that is not thought of. */
  indexOf(a?: number, b?: number): number;
}

/** Indexes of two faults, the lower first. */
export type FaultPair = readonly [number, number];

/** States of a model with n faults, in this order: none, n singles, all n(n−1)/2 pairs or only those that are given (in their order, without repetition), unknown. */
export function stateSpace({ faults }: Pick<DeviceModel, 'faults'>, only?: readonly FaultPair[]): StateSpace {
  const n = faults.length;
  const members: (readonly number[])[] = [[]];
  for (let a = 0; a < n; a++) members.push([a]);
  const pairStart = members.length;
  if (only) members.push(...only);
  else for (let a = 0; a < n; a++) for (let b = a + 1; b < n; b++) members.push([a, b]);
  const unknown = members.length;
  members.push([]);
  const listed = only && new Map(only.map(([low, high], i) => [low * n + high, pairStart + i]));
  const pairIndex = (low: number, high: number): number =>
    listed ? (listed.get(low * n + high) ?? -1) : pairStart + low * n - (low * (low + 1)) / 2 + (high - low - 1);
  const indexOf = (a?: number, b?: number): number => {
    if (a === undefined) return 0;
    if (b === undefined || a === b) return 1 + a;
    return a < b ? pairIndex(a, b) : pairIndex(b, a);
  };
  const first = Int16Array.from(members, ([a]) => a ?? -1);
  const second = Int16Array.from(members, ([, b]) => b ?? -1);
  const space = { size: members.length, faults: n, members, first, second, none: 0, unknown, indexOf };
  return only ? { ...space, only } : space;
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
