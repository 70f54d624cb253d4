import type { Circuit } from './compile.ts';
import type { Conditions } from './devices/bank.ts';
import { DEFAULT_EFFORT } from './effort.ts';
import { residuals } from './residuals.ts';

/** Least current, A, or voltage, V, that counts as left over; above it, this share of the terms of the same equation does. */
const ABSOLUTE = 1e-9;
const RELATIVE = 1e-5;

/**
 * Throws where a solution breaks the law of the room: the currents that leave a node sum to zero (Kirchhoff 1845), and each branch holds its own
 * equation. The message names the node. `shuntS` is the shunt to ground that the solution was found with.
 */
export function assertCircuit(circuit: Circuit, conditions: Conditions, x: Float64Array, shuntS = DEFAULT_EFFORT.shuntS): void {
  const { left, terms } = residuals(circuit, conditions, x, shuntS);
  left.forEach((value, i) => {
    if (Math.abs(value) <= ABSOLUTE + RELATIVE * terms[i]!) return;
    const place = circuit.netlist.nodes[i] ?? `the inner equation ${i}`;
    throw new Error(`at ${place} ${value} is left over of ${terms[i]!}`);
  });
  if (x[circuit.size] !== 0) throw new Error(`ground is at ${x[circuit.size]} V`);
}
