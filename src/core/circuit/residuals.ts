import type { Circuit } from './compile.ts';
import { JUNCTION_GMIN, type Conditions, type Loading } from './devices/bank.ts';

/** What is left over of each equation at a guess, and how large its terms are. */
export interface Residuals {
  /** By unknown: sum of the currents that leave a node, A; what is missing in the equation of a branch, V. 0 at an operating point. */
  readonly left: Float64Array;
  /** Sum of the absolute values of the same terms: what `left` is small against. */
  readonly terms: Float64Array;
}

/** The equations of the circuit at `x`, one a row, without solving anything. `shuntS` is the shunt from each node to ground. */
export function residuals(circuit: Circuit, conditions: Conditions, x: Float64Array, shuntS: number): Residuals {
  const { rows, cols } = circuit.pattern;
  const { slots } = circuit.lu;
  const { length } = circuit.lu.values;
  const loading: Loading = {
    x,
    values: new Float64Array(length),
    rhs: new Float64Array(circuit.size + 1),
    limited: false,
    settledV: Infinity,
  };
  for (const bank of circuit.banks) {
    bank.prepare(conditions, x, 1);
    bank.load(loading);
  }
  const nodes = circuit.netlist.nodes.length;
  circuit.diagonal.places.forEach((place, i) => (loading.values[place]! += i < nodes ? shuntS : JUNCTION_GMIN));
  const left = loading.rhs.map((value) => -value).subarray(0, circuit.size);
  const terms = left.map(Math.abs);
  rows.forEach((row, i) => {
    const term = loading.values[slots[i]!]! * x[cols[i]!]!;
    left[row]! += term;
    terms[row]! += Math.abs(term);
  });
  return { left, terms };
}
