import { compileCircuit, type Circuit } from '../compile.ts';
import type { Conditions } from '../devices/bank.ts';
import type { Effort } from '../effort.ts';
import type { Netlist } from '../netlist/types.ts';
import { applyFaults, isEdit, jointName } from '../faults/apply-faults.ts';
import { severityFactor } from '../faults/at-severity.ts';
import type { Change, CircuitFault } from '../faults/fault.ts';
import { inPowerState, type PowerState } from '../meter/power-state.ts';
import { PointSolver } from '../point-solver.ts';
import type { Draw } from './draws.ts';

/** Faults that are there together; none is a healthy board. */
export type FaultSet = readonly Pick<CircuitFault, 'changes'>[];

/** What every faulted board of one simulation has in common. */
export interface Bench {
  readonly circuit: Circuit;
  readonly solver: PointSolver;
  /** Findings and remedies that are already certain, without power. */
  readonly baseline: Conditions;
  readonly state: PowerState;
  /** The baseline in that state: how the healthy board stands. */
  readonly standing: Conditions;
  readonly effort: Effort;
  /** Pairs of nodes, both away from ground, between which is measured. */
  readonly leads: readonly (readonly [string, string])[];
}

/** Where the leads are; the black one is on ground unless it is said. */
export interface LeadsAt {
  readonly red: string;
  readonly black?: string;
}

/** Those leads of which neither is on ground. */
export const leadsOf = (points: readonly LeadsAt[]): [string, string][] =>
  points.flatMap(({ red, black = '0' }): [string, string][] => (black === '0' || red === '0' ? [] : [[red, black]]));

export function makeBench(circuit: Circuit, baseline: Conditions, state: PowerState, effort: Effort, leads: Bench['leads']): Bench {
  const own = leads.length > 0 ? compileCircuit(circuit.netlist, leads) : circuit;
  const standing = inPowerState(circuit.netlist, baseline, state);
  return { circuit: own, solver: new PointSolver(own, effort), baseline, state, standing, effort, leads };
}

/** A board with faults, ready to be solved draw after draw. Faults that leave the wiring alone share the circuit of the bench. */
export class FaultedBoard {
  readonly circuit: Circuit;
  readonly solver: PointSolver;
  readonly changes: readonly Change[];
  /** Filled by `take`. */
  readonly conditions: Conditions;
  private readonly ownScale: Float64Array;
  private readonly ownBridge: Float64Array;
  private readonly varied: readonly Varied[];
  private readonly liftedFrom: readonly number[];

  /** `around` is a state of the healthy circuit. */
  constructor(
    private readonly bench: Bench,
    set: FaultSet,
    around: Float64Array,
  ) {
    const { netlist } = bench.circuit;
    const faulted = applyFaults(netlist, bench.baseline, set);
    this.changes = set.flatMap(({ changes }) => changes);
    this.liftedFrom = faulted.liftedFrom.map((node) => bench.circuit.nodeIndex.get(node) ?? bench.circuit.size);
    const fed = inPowerState(faulted.netlist, faulted.conditions, bench.state);
    [this.ownScale, this.ownBridge] = [fed.scale, fed.bridge];
    this.conditions = { ...fed, scale: fed.scale.slice(), bridge: fed.bridge.slice() };
    this.varied = variedOf(this.changes, faulted.netlist);
    const shared = faulted.netlist === netlist;
    this.circuit = shared ? bench.circuit : this.compile(faulted.netlist, around);
    this.solver = shared ? bench.solver : new PointSolver(this.circuit, bench.effort);
  }

  private compile(netlist: Netlist, around: Float64Array): Circuit {
    const x = new Float64Array(around.length + this.liftedFrom.length);
    this.carry(around, x);
    return compileCircuit(netlist, this.bench.leads, { conditions: this.conditions, x });
  }

  /** Takes over the tolerances of one board, and how bad the faults are on it. */
  take({ scale: drawn, severity }: Draw): void {
    const { scale, bridge } = this.conditions;
    for (let i = 0; i < scale.length; i++) scale[i] = this.ownScale[i]! * (i < drawn.length ? drawn[i]! : 1);
    for (const { at } of this.varied) bridge[at] = this.ownBridge[at]!;
    for (const { at, siemens, spread } of this.varied) {
      const factor = severityFactor(spread, severity);
      if (siemens > 0) bridge[at]! += siemens * (1 / factor - 1);
      else scale[at]! *= factor;
    }
  }

  /** Whether its faults differ from board to board. */
  get isVaried(): boolean {
    return this.varied.length > 0;
  }

  /** A state of the healthy circuit as a guess for this one: a pin that was lifted starts at the voltage of the net that it was at. */
  carry(healthy: Float64Array, into: Float64Array): void {
    const nodes = this.bench.circuit.netlist.nodes.length;
    const { size } = this.bench.circuit;
    into.set(healthy.subarray(0, nodes));
    this.liftedFrom.forEach((from, i) => (into[nodes + i] = healthy[from]!));
    into.set(healthy.subarray(nodes, size + 1), nodes + this.liftedFrom.length);
  }
}

/** A part whose resistance, or the conductance across which, differs from board to board. */
interface Varied {
  readonly at: number;
  readonly spread: number;
  /** Typical conductance across the part; 0 where its own resistance varies. */
  readonly siemens: number;
}

function variedOf(changes: readonly Change[], { parts }: Netlist): Varied[] {
  const index = new Map(parts.map(({ name }, i) => [name.toLowerCase(), i]));
  const edits = changes.filter(isEdit);
  return changes.flatMap((change): Varied[] => {
    if (!('spread' in change) || change.spread === undefined) return [];
    const name = change.does === 'join' ? jointName(edits.indexOf(change)) : change.part;
    return [{ at: index.get(name)!, spread: change.spread, siemens: change.does === 'bridge' ? 1 / change.ohm : 0 }];
  });
}

/** Sets that change the circuit in the same way are solved once: for each set the first that is like it. */
export function firstAlike(sets: readonly FaultSet[]): number[] {
  const first = new Map<string, number>();
  return sets.map((set, i) => {
    const key = JSON.stringify(set.map(({ changes }) => changes));
    const found = first.get(key);
    if (found === undefined) first.set(key, i);
    return found ?? i;
  });
}
