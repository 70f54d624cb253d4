import type { DeviceModel } from './model.ts';

/**
 * The hidden states of a unit: no fault, each single fault, each pair, and last "something that is not in the model". A state is a number; the tables
 * tell what it holds and where the removal of a fault leads.
 */
export interface StateSpace {
  readonly size: number;
  /** Faults of each state as indexes into `model.faults`; empty for "nothing" and for "unknown". */
  readonly members: readonly (readonly number[])[];
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
  return { size: members.length, members, none: 0, unknown, indexOf };
}
