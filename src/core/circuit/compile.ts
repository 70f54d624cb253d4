import { SparseLu } from '../numeric/index.ts';
import { CircuitError } from './circuit-error.ts';
import { JUNCTION_GMIN, type Bank, type Conditions, type Loading, type Wiring } from './devices/bank.ts';
import { BoardParts } from './devices/board-parts.ts';
import { Branches, ControlledCurrents } from './devices/branches.ts';
import { Conductances } from './devices/conductances.ts';
import { Diodes } from './devices/diodes.ts';
import { EntryList } from './devices/entry-list.ts';
import { Mosfets } from './devices/mosfets.ts';
import { CurrentSources } from './devices/sources.ts';
import { Switches } from './devices/switches.ts';
import { Transistors } from './devices/transistors.ts';
import { DEFAULT_EFFORT } from './effort.ts';
import type { Netlist, Part } from './netlist/types.ts';

/** A netlist made ready to be solved many times: unknowns numbered, every place of the matrix known, pivots ordered. */
export interface Circuit {
  readonly netlist: Netlist;
  /** Unknowns: node voltages first, in the order of `netlist.nodes`, then currents and inner nodes. */
  readonly size: number;
  readonly nodeIndex: ReadonlyMap<string, number>;
  readonly partIndex: ReadonlyMap<string, number>;
  /** Unknown that is the current of a voltage source, from plus through it to minus, by lower-case name. */
  readonly currentOf: ReadonlyMap<string, number>;
  readonly banks: readonly Bank[];
  /** Which unknowns are voltages (1) and which are currents (0). */
  readonly isVoltage: Uint8Array;
  /** Whether any part bends: a straight circuit needs one step and no care. */
  readonly bends: boolean;
  /** Handles of the diagonal, one a node of the netlist, then one an inner node: where a shunt to ground is added. */
  readonly diagonal: EntryList;
  /** Pairs of unknowns away from ground that a meter may be put across, and handles of their two mixed entries. */
  readonly leads: readonly Leads[];
  readonly leadEntries: EntryList;
  readonly pattern: { readonly rows: readonly number[]; readonly cols: readonly number[] };
  /** The present order of pivots; replaced when it no longer serves. */
  lu: SparseLu;
}

/** Two unknowns that the leads of a meter touch; `Circuit.size` is ground. */
export interface Leads {
  readonly red: number;
  readonly black: number;
}

const BENT: ReadonlySet<Part['kind']> = new Set(['D', 'Q', 'M', 'S', 'W', 'LINREG', 'BOOST', 'BUCK', 'CHARGER', 'LOAD']);

/** Everything as it is written: no part scaled, none removed, no bridge. */
export function asWritten(netlist: Netlist): Conditions {
  const count = netlist.parts.length;
  return { scale: new Float64Array(count).fill(1), removed: new Uint8Array(count), bridge: new Float64Array(count) };
}

/**
 * Numbers the unknowns of a netlist and orders the pivots for its parts as written: about a millisecond for a hundred nodes. `leads` are pairs of
 * nodes, both away from ground, that a meter will be put across. `around` is the state that pivots are ordered for: the closer to what will be
 * solved, the less often they are ordered anew.
 */
export function compileCircuit(
  netlist: Netlist,
  leads: readonly (readonly [string, string])[] = [],
  around?: { readonly conditions: Conditions; readonly x: Float64Array },
): Circuit {
  const desk = new WiringDesk(netlist.nodes, countExtras(netlist));
  const conductances = new Conductances(desk, netlist.parts);
  const branches = new Branches(desk, netlist.parts);
  const { currentOf } = branches;
  const { parts, temperatureK } = netlist;
  const banks: Bank[] = [
    conductances,
    branches,
    new CurrentSources(desk, parts),
    new ControlledCurrents(desk, parts, currentOf),
    new Switches(desk, parts, currentOf),
    new Diodes(desk, parts, temperatureK),
    new Transistors(desk, parts, temperatureK),
    new Mosfets(desk, parts, temperatureK),
    new BoardParts(desk, parts),
  ];
  const diagonal = new EntryList(desk);
  desk.isVoltage.forEach((isVoltage, i) => isVoltage && diagonal.add(i, i)); // nodes of the netlist come first
  const leadEntries = new EntryList(desk);
  const pairs = leads.map(([red, black]) => ({ red: desk.node(red), black: desk.node(black) }));
  for (const { red, black } of pairs) {
    leadEntries.add(red, black);
    leadEntries.add(black, red);
  }
  const size = desk.isVoltage.length;
  const partIndex = new Map(parts.map((part, i) => [part.name.toLowerCase(), i]));
  const circuit = {
    netlist,
    size,
    nodeIndex: desk.index,
    partIndex,
    currentOf,
    banks,
    diagonal,
    isVoltage: Uint8Array.from(desk.isVoltage),
    bends: parts.some((part) => BENT.has(part.kind)),
    leads: pairs,
    leadEntries,
    pattern: desk.pattern(),
  };
  const { conditions, x } = around ?? { conditions: asWritten(netlist), x: new Float64Array(size + 1) };
  const lu = orderPivots(circuit, conditions, x) ?? orderByPattern(circuit);
  if (!lu)
    throw new CircuitError(
      'singular',
      'the equations of these parts have no solution whatever their values, or the parts are joined so densely that it would take too long',
    );
  return { ...circuit, lu };
}

/** A new order of pivots for these conditions around the guess `x`, with all banks bound to it. Undefined, and nothing changed, where there is none. */
export function orderPivots(
  circuit: Omit<Circuit, 'lu'> & { lu?: SparseLu },
  conditions: Conditions,
  x: Float64Array,
): SparseLu | undefined {
  const { rows, cols } = circuit.pattern;
  const ground = rows.length;
  bindAll(
    circuit,
    Int32Array.from({ length: ground + 1 }, (_, i) => i),
  );
  const loading: Loading = {
    x,
    values: new Float64Array(ground + 1),
    rhs: new Float64Array(circuit.size + 1),
    limited: false,
    settledV: Infinity,
  };
  for (const bank of circuit.banks) {
    bank.prepare(conditions, x, 1);
    bank.load(loading);
  }
  const nodes = circuit.netlist.nodes.length;
  circuit.diagonal.places.forEach((place, i) => (loading.values[place]! += i < nodes ? DEFAULT_EFFORT.shuntS : JUNCTION_GMIN));
  const lu = SparseLu.ordered({ size: circuit.size, rows, cols }, loading.values);
  const used = lu ?? circuit.lu;
  if (used) bindTo(circuit, used);
  return lu;
}

/** An order of pivots that serves where the parts as written have no solution, such as two unlike voltage sources across one pair of nodes. */
function orderByPattern(circuit: Omit<Circuit, 'lu'>): SparseLu | undefined {
  const { rows, cols } = circuit.pattern;
  const golden = (Math.sqrt(5) - 1) / 2;
  const lu = SparseLu.ordered(
    { size: circuit.size, rows, cols },
    rows.map((_, i) => 1 + ((i * golden) % 1)),
  );
  if (lu) bindTo(circuit, lu);
  return lu;
}

const bindTo = (circuit: Omit<Circuit, 'lu'>, lu: SparseLu): void => bindAll(circuit, Int32Array.from([...lu.slots, lu.values.length - 1]));

function bindAll(circuit: Omit<Circuit, 'lu'>, places: Int32Array): void {
  for (const bank of circuit.banks) bank.bind(places);
  circuit.diagonal.bind(places);
  circuit.leadEntries.bind(places);
}

/** Hands out unknowns and handles. A handle past the last entry stands for every place in ground's row or column. */
class WiringDesk implements Wiring {
  readonly index: Map<string, number>;
  readonly isVoltage: boolean[];
  private readonly rows: number[] = [];
  private readonly cols: number[] = [];
  private readonly seen = new Map<number, number>();

  readonly ground: number;

  constructor(nodes: readonly string[], extras: number) {
    this.index = new Map(nodes.map((node, i) => [node, i]));
    this.isVoltage = nodes.map(() => true);
    this.ground = nodes.length + extras;
  }

  node(name: string): number {
    return name === '0' ? this.ground : this.index.get(name)!;
  }

  extra(what: 'current' | 'node'): number {
    return this.isVoltage.push(what === 'node') - 1;
  }

  entry(row: number, col: number): number {
    if (row === this.ground || col === this.ground) return GROUND_HANDLE;
    const key = row * (this.ground + 1) + col;
    let handle = this.seen.get(key);
    if (handle === undefined) {
      handle = this.rows.push(row) - 1;
      this.cols.push(col);
      this.seen.set(key, handle);
    }
    return handle;
  }

  pattern(): { rows: readonly number[]; cols: readonly number[] } {
    return { rows: this.rows, cols: this.cols };
  }
}

const GROUND_HANDLE = -1;

const positive = (...values: (number | undefined)[]): number => values.filter((value) => (value ?? 0) > 0).length;

/** Unknowns beyond the nodes: branch currents, and inner nodes behind series resistances. */
function countExtras(netlist: Netlist): number {
  const of = ({ kind, params: p }: Part): number => {
    if (
      kind === 'V' ||
      kind === 'L' ||
      kind === 'E' ||
      kind === 'H' ||
      kind === 'LINREG' ||
      kind === 'BOOST' ||
      kind === 'BUCK' ||
      kind === 'CHARGER'
    )
      return 1;
    if (kind === 'Q') return positive(p['rb'], p['rc'], p['re']);
    return kind === 'M' ? positive(p['rd'], p['rs']) : 0;
  };
  return netlist.parts.reduce((sum, part) => sum + of(part), 0);
}
