import { CircuitError } from '../circuit-error.ts';
import type { Conditions } from '../devices/bank.ts';
import type { Netlist, Part } from '../netlist/types.ts';
import type { Change, CircuitFault } from './fault.ts';

/** A netlist with faults in it. */
export interface FaultedNetlist {
  /** The same object where no change touches the wiring; otherwise an edited copy: parts and nodes that were there keep their places. */
  readonly netlist: Netlist;
  /** By part of that netlist, on top of `conditions` that were given. */
  readonly conditions: Conditions;
  /** For each node past those of the healthy netlist, the node that it was lifted off. */
  readonly liftedFrom: readonly string[];
}

type Edit = Extract<Change, { does: 'join' | 'lift' | 'swap' | 'exchange' }>;

const EDITS: ReadonlySet<Change['does']> = new Set(['join', 'lift', 'swap', 'exchange']);

export const isEdit = (change: Change): change is Edit => EDITS.has(change.does);

/** Puts faults into a netlist. Throws CircuitError for a part that the netlist does not have. */
export function applyFaults(netlist: Netlist, conditions: Conditions, faults: readonly Pick<CircuitFault, 'changes'>[]): FaultedNetlist {
  const changes = faults.flatMap((fault) => fault.changes);
  const edited = edit(netlist, changes.filter(isEdit));
  const count = edited.netlist.parts.length;
  const grown = {
    scale: new Float64Array(count).fill(1),
    removed: new Uint8Array(count),
    bridge: new Float64Array(count),
  };
  grown.scale.set(conditions.scale);
  grown.removed.set(conditions.removed);
  grown.bridge.set(conditions.bridge);
  const find = partFinder(netlist);
  for (const change of changes) {
    if (change.does === 'scale') grown.scale[find(change.part)]! *= change.by;
    if (change.does === 'remove') grown.removed[find(change.part)] = 1;
    if (change.does === 'bridge') grown.bridge[find(change.part)]! += 1 / change.ohm;
  }
  return { ...edited, conditions: grown };
}

/** What joins two nets is a part of the edited netlist, named by the place of its edit. */
export const jointName = (place: number): string => `fault.join${place}`;

function edit(netlist: Netlist, edits: readonly Edit[]): { netlist: Netlist; liftedFrom: string[] } {
  const liftedFrom: string[] = [];
  if (edits.length === 0) return { netlist, liftedFrom };
  const parts = [...netlist.parts];
  const nodes = [...netlist.nodes];
  const find = partFinder(netlist);
  edits.forEach((change, i) => {
    if (change.does === 'join') parts.push(joint(jointName(i), change.nodes, change.ohm));
    else if (change.does === 'swap') parts[find(change.part)] = swapped(parts[find(change.part)]!, change.pins);
    else if (change.does === 'exchange') for (const at of change.parts.map(find)) parts[at] = exchanged(parts[at]!, change.nodes);
    else {
      const fresh = `fault.lift${i}`;
      nodes.push(fresh);
      liftedFrom.push(change.node);
      for (const name of change.parts) {
        const at = find(name);
        parts[at] = { ...parts[at]!, nodes: parts[at]!.nodes.map((node) => (node === change.node ? fresh : node)) };
      }
    }
  });
  return { netlist: { ...netlist, parts, nodes }, liftedFrom };
}

function partFinder({ parts }: Netlist): (name: string) => number {
  const index = new Map(parts.map((part, i) => [part.name.toLowerCase(), i]));
  return (name) => {
    const at = index.get(name);
    if (at === undefined) throw new CircuitError('unknown-name', `the netlist has no part "${name}"`);
    return at;
  };
}

function swapped(part: Part, [a, b]: readonly [number, number]): Part {
  const nodes = [...part.nodes];
  [nodes[a], nodes[b]] = [nodes[b]!, nodes[a]!];
  return { ...part, nodes };
}

function exchanged(part: Part, [a, b]: readonly [string, string]): Part {
  return { ...part, nodes: part.nodes.map((node) => (node === a ? b : node === b ? a : node)) };
}

const joint = (name: string, nodes: readonly [string, string], ohm: number): Part => ({
  name,
  kind: 'R',
  nodes,
  value: ohm,
  params: {},
  type: '',
  control: '',
  line: 0,
  column: 0,
});
