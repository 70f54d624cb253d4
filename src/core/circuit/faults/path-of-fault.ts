import type { Netlist } from '../netlist/types.ts';
import type { CircuitFault } from './fault.ts';

/** A resistance that a fault puts between two nodes. */
export interface FaultPath {
  /** The two nodes in the order of the alphabet: `0~v33`. */
  readonly between: string;
  /** Natural logarithm of the typical resistance in Ω, and its standard deviation from board to board. */
  readonly logOhm: number;
  readonly spread: number;
}

/** The path of a fault that is nothing but one; undefined of all others. */
export function pathOfFault({ parts }: Netlist, { changes }: Pick<CircuitFault, 'changes'>): FaultPath | undefined {
  const [change, ...others] = changes;
  if (!change || others.length > 0 || (change.does !== 'bridge' && change.does !== 'join')) return undefined;
  const nodes = change.does === 'join' ? change.nodes : parts.find(({ name }) => name.toLowerCase() === change.part)!.nodes.slice(0, 2);
  return { between: [...nodes].sort().join('~'), logOhm: Math.log(change.ohm), spread: change.spread ?? 0 };
}
