import { compileCircuit, operatingPoint, readNetlist } from '../../src/core/circuit/index.ts';
import { ngspiceVoltages } from './ngspice.ts';

/** Tolerances of the other simulator are tightened well below the difference that is allowed. */
const SETTINGS = '.options reltol=1e-7 abstol=1e-13 vntol=1e-9 gmin=1e-12\n.op\n.end';
/** Voltage below which a difference is counted in V: a node at 10 nV has no relative error worth the name. */
const FLOOR_V = 0.01;

/** Node voltages by our own engine; throws where there are none. */
export function ourVoltages(text: string): Map<string, number> {
  const read = readNetlist(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const circuit = compileCircuit(read.netlist);
  const solution = operatingPoint(circuit);
  if (!solution.ok) throw new Error(`${solution.code} at ${solution.worst}`);
  return new Map([...circuit.nodeIndex].map(([node, i]) => [node, solution.x[i]!]));
}

/** Ours ties every node to ground with 1 GΩ, so that floating nodes have an answer; the other is given the same. */
const shunts = (nodes: readonly string[]): string => nodes.map((node, i) => `Rshunt${i} ${node} 0 1g`).join('\n');

/** Relative differences of all nodes of a circuit, written for us and for the general simulator. */
export async function voltageDifferences(ours: string, theirs: string): Promise<number[]> {
  const own = ourVoltages(ours);
  const other = await ngspiceVoltages(`${theirs}\n${shunts([...own.keys()])}\n${SETTINGS}`);
  if (!other) throw new Error('the other simulator found no operating point');
  return [...own].map(([node, v]) => Math.abs(v - other.get(node)!) / Math.max(Math.abs(other.get(node)!), FLOOR_V));
}
