import type { Circuit } from './compile.ts';
import type { Conditions } from './devices/bank.ts';
import { residuals } from './residuals.ts';

/**
 * What each net carries at an operating point `x`, A, in the order of `netlist.nodes`: the currents that parts let into it, which are as large as those
 * that leave it (Kirchhoff 1845). Found as half the sum of the absolute currents of its terminals; part by part, the others taken out. Several terminals
 * of one part on the same net count together. Steady currents only: what a capacitor takes while it is charged is not in it.
 */
export function netCurrents(circuit: Circuit, conditions: Conditions, x: Float64Array): Float64Array {
  const { parts, nodes } = circuit.netlist;
  const removed = new Uint8Array(parts.length).fill(1);
  const bridge = new Float64Array(parts.length);
  const at = (): ReturnType<typeof residuals> => residuals(circuit, { scale: conditions.scale, removed, bridge }, x, 0);
  // With every part out, what is left in the equations of nodes are the currents of branches, each an unknown of its own.
  const branches = at();
  const twice = branches.terms.slice(0, nodes.length);
  parts.forEach((_, part) => {
    removed[part] = conditions.removed[part]!;
    bridge[part] = conditions.bridge[part]!;
    const { left } = at();
    for (let i = 0; i < nodes.length; i++) twice[i]! += Math.abs(left[i]! - branches.left[i]!);
    removed[part] = 1;
    bridge[part] = 0;
  });
  return twice.map((value) => value / 2);
}
