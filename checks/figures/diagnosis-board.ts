import {
  CLOSED_CONTACT_OHM,
  compileCircuit,
  drawBoards,
  faultUniverse,
  HANDHELD_METER,
  meterError,
  pathOfFault,
  powered,
  readNetlist,
  unpowered,
  type Circuit,
  type CircuitFault,
  type Draw,
  type FaultSet,
  type Netlist,
} from '../../src/core/circuit/index.ts';
import {
  kernelsOf,
  outcomeBands,
  type Baseline,
  type OutcomeBands,
  type ReadingFault,
  type ReadingPoint,
  type SimulatePairs,
} from '../../src/core/diagnosis/readings/index.ts';
import type { Remedy, Stage } from '../../src/core/diagnosis/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { Trier } from './diagnosis-trials.ts';
import { syntheticBoard, syntheticPlacement } from '../circuit/synthetic-board.ts';

export const POWER = { supplies: { XBT1: 3.9 } };
export const DRAWS = 16;
/** As many single faults as the trial had that the targets come from. */
const FAULTS = 462;

/** A board with its faults and all that can be measured on it: volts on the cell, ohms and junctions without power. */
export interface StudyBoard {
  readonly netlist: Netlist;
  readonly circuit: Circuit;
  readonly circuitFaults: readonly CircuitFault[];
  readonly faults: readonly ReadingFault[];
  readonly points: readonly ReadingPoint[];
  /** By point, where the leads are, and the keys that are held. */
  readonly leads: readonly Leads[];
  readonly remedies: readonly Remedy[];
}

interface Leads {
  readonly red: string;
  readonly black: string;
  readonly held?: string;
}

export function studyBoard(): StudyBoard {
  const { text, outside } = syntheticBoard();
  const read = readNetlist(text);
  if (!read.ok) throw new Error('the synthetic board does not read');
  const { netlist } = read;
  const placement = syntheticPlacement(netlist, outside);
  const random = randomStream('faults of the study');
  const all = faultUniverse(netlist, placement, { outside }).map((fault) => ({ fault, key: random() }));
  const circuitFaults = all
    .sort((a, b) => a.key - b.key)
    .slice(0, FAULTS)
    .map(({ fault }) => fault);
  const faults = circuitFaults.map((fault): ReadingFault => {
    const { id, components, rate } = fault;
    const path = pathOfFault(netlist, fault);
    return { id, rate, block: components[0]!, part: components[0]!, ...(path ? { path } : {}) };
  });
  const measured = pointsOf(netlist);
  const [points, leads] = [measured.map(({ point }) => point), measured.map((each) => each.leads)];
  return { netlist, circuit: compileCircuit(netlist), circuitFaults, faults, points, leads, remedies: remediesOf(circuitFaults) };
}

const STAGE: Stage = 'board-out';

/** Each net against ground, in three modes; each contact across its two sides; each key across, held. */
function pointsOf({ nodes, parts }: Netlist): { point: ReadingPoint; leads: Leads }[] {
  const nets = nodes.filter((node) => !node.includes('.'));
  const at = (id: string, mode: 'volts' | 'ohms' | 'diode', power: string, i: number, leads: Leads) => ({
    point: { id: `${mode} ${id}`, mode, minutes: 0.4, side: i % 4 === 0 ? ('back' as const) : ('front' as const), stage: STAGE, power },
    leads,
  });
  const toGround = (mode: 'volts' | 'ohms' | 'diode', power: string) =>
    nets.map((net, i) => at(net, mode, power, i, { red: net, black: '0' }));
  const across = parts
    .filter(({ name }) => /^RJ\d/i.test(name))
    .map(({ name, nodes: [red, black] }, i) => at(name, 'ohms', 'off', i, { red: red!, black: black! }));
  const keys = parts
    .filter(({ name }) => /^RSW\d/i.test(name))
    .map(({ name, nodes: [red, black] }, i) => at(`${name} held`, 'ohms', 'off', i, { red: red!, black: black!, held: name }));
  return [...toGround('volts', 'cell'), ...toGround('ohms', 'off'), ...toGround('diode', 'off'), ...across, ...keys];
}

/** A part of each component new, each component soldered anew, bridges sucked off. */
function remediesOf(faults: readonly CircuitFault[]): Remedy[] {
  const mends = new Map<string, { minutes: number; cost: number; mends: Record<string, number> }>();
  const add = (id: string, minutes: number, cost: number, fault: string, chance: number): void => {
    const remedy = mends.get(id) ?? { minutes, cost, mends: {} };
    remedy.mends[fault] = chance;
    mends.set(id, remedy);
  };
  for (const { id, kind, components, nets } of faults) {
    if (kind === 'bridge' || kind === 'liquid-leak') {
      add(`clear ${[...nets].sort().join(' and ')}`, 6, 0, id, 0.95);
      continue;
    }
    const chip = /^(xu|u)/.test(components[0]!);
    add(`replace ${components[0]}`, chip ? 30 : 8, chip ? 400 : 30, id, 0.95);
    if (kind === 'open-joint') add(`reflow ${components[0]}`, 5, 0, id, 0.85);
    if (kind === 'dirty-contact') add(`clean ${components[0]}`, 4, 0, id, 0.8);
  }
  return [...mends].map(([id, { minutes, cost, mends: by }]) => ({
    id,
    minutes,
    partsCostMinor: cost,
    mends: by,
    risk: 0.01,
    stage: STAGE,
  }));
}

/** Readings of each set of faults on each drawn board, in the order of a dictionary; only at these points of the board. */
export function simulate(board: StudyBoard, sets: readonly FaultSet[], draws: readonly Draw[], at: readonly number[]): Float64Array {
  const values = new Float64Array(sets.length * draws.length * at.length);
  const put = (columns: readonly number[], from: Float64Array): void => {
    for (let row = 0; row < sets.length * draws.length; row++)
      columns.forEach((column, i) => (values[row * at.length + column] = from[row * columns.length + i]!));
  };
  const places = [...at.keys()];
  const modeOf = (i: number) => board.points[at[i]!]!.mode as 'volts' | 'ohms' | 'diode';
  const leadsOf = (i: number) => board.leads[at[i]!]!;
  const fed = places.filter((i) => modeOf(i) === 'volts');
  if (fed.length > 0) put(fed, powered(board.circuit, sets, draws, { state: POWER, points: fed.map(leadsOf) }).values);
  const rest = places.filter((i) => modeOf(i) !== 'volts');
  for (const held of new Set(rest.map((i) => leadsOf(i).held))) {
    const columns = rest.filter((i) => leadsOf(i).held === held);
    const points = columns.map((i) => ({ ...leadsOf(i), mode: modeOf(i) as 'ohms' | 'diode' }));
    put(columns, unpowered(held === undefined ? board.circuit : withHeld(board.netlist, held), sets, draws, { points }).values);
  }
  return values;
}

const withHeld = (netlist: Netlist, held: string): Circuit =>
  compileCircuit({ ...netlist, parts: netlist.parts.map((part) => (part.name === held ? { ...part, value: CLOSED_CONTACT_OHM } : part)) });

export interface Learned {
  readonly board: StudyBoard;
  readonly baseline: Baseline;
  readonly bands: OutcomeBands;
  readonly trier: Trier;
}

/** What the advice knows: the dictionary of the study's own draws. */
export function learn(board: StudyBoard): Learned {
  const draws = drawBoards(board.netlist, DRAWS, randomStream('draws of the dictionary'));
  const all = [...board.points.keys()];
  const values = simulate(board, [[], ...board.circuitFaults.map((fault) => [fault])], draws, all);
  const dictionary = { faults: board.faults, points: board.points, draws: DRAWS, values };
  const kernels = kernelsOf(dictionary, (mode, value) => meterError(HANDHELD_METER, mode, value));
  const pairs = remembered((wanted, points) =>
    simulate(
      board,
      wanted.map((pair) => pair.map((fault) => board.circuitFaults[fault]!)),
      draws,
      points,
    ),
  );
  const trier = new Trier(board.netlist, board.circuit, draws);
  const functions = trier.works([[], ...board.circuitFaults.map((fault) => [fault])], draws);
  return { board, baseline: { kernels, functions, simulate: pairs }, bands: outcomeBands(kernels), trier };
}

/** Simulates a pair at a point only once. */
function remembered(simulatePairs: SimulatePairs): SimulatePairs {
  const known = new Map<string, Float64Array>();
  return (pairs, points) => {
    const missing = new Map<string, (readonly [number, number])[]>();
    for (const [a, b] of pairs) {
      const key = points.filter((p) => !known.has(`${a} ${b} ${p}`)).join();
      missing.set(key, [...(missing.get(key) ?? []), [a, b]]);
    }
    for (const [key, some] of missing) {
      if (key === '') continue;
      const at = key.split(',').map(Number);
      const values = simulatePairs(some, at);
      some.forEach(([a, b], k) =>
        at.forEach((p, i) =>
          known.set(
            `${a} ${b} ${p}`,
            Float64Array.from({ length: DRAWS }, (_, d) => values[(k * DRAWS + d) * at.length + i]!),
          ),
        ),
      );
    }
    const result = new Float64Array(pairs.length * DRAWS * points.length);
    pairs.forEach(([a, b], k) =>
      points.forEach((p, i) => known.get(`${a} ${b} ${p}`)!.forEach((value, d) => (result[(k * DRAWS + d) * points.length + i] = value))),
    );
    return result;
  };
}
