import { CircuitError } from '../circuit-error.ts';
import { asWritten, type Circuit } from '../compile.ts';
import type { Conditions } from '../devices/bank.ts';
import { DEFAULT_EFFORT, type Effort } from '../effort.ts';
import { currentOut, unknownOf } from '../meter/measure.ts';
import { HANDHELD_METER, type MeterProfile } from '../meter/meter-profile.ts';
import type { PowerState } from '../meter/power-state.ts';
import type { Draw } from './draws.ts';
import { FaultedBoard, firstAlike, leadsOf, makeBench, type Bench, type FaultSet, type LeadsAt } from './faulted-board.ts';
import { emptyValues, type Simulated } from './simulated.ts';

/** A voltage between two leads, or what a supply gives into the board. */
export type PoweredPoint = LeadsAt | { readonly supply: string };

const hasLeads = (point: PoweredPoint): point is LeadsAt => 'red' in point;

export interface PoweredOptions {
  readonly state: PowerState;
  readonly points: readonly PoweredPoint[];
  readonly baseline?: Conditions;
  readonly profile?: MeterProfile;
  readonly shouldStop?: () => boolean;
}

/**
 * Effort of a simulation: a step of 0.2 mV is the last one, because what it leaves is its square over the thermal voltage, below 1 µV, where a meter
 * shows 1 mV.
 */
export const SIMULATION_EFFORT: Effort = { ...DEFAULT_EFFORT, absoluteV: 2e-4, absoluteA: 1e-5, relative: 1e-4 };

/** Above this share of the meter's own resistance that of the point is high. */
const STRAIGHT_SHARE = 0.01;
/** The same where the fault itself differs from board to board, and with it the resistance of the point by a factor of ten or so. */
const VARIED_SHARE = 5e-5;
/** A straight line that is off by less than this share on the first draw serves on all. */
const STRAIGHT_WITHIN = 2e-4;
/** Below this voltage it does not matter what the meter takes off, V. */
const LEAST_V = 1e-3;

/**
 * Voltages that a meter would show in one power state, and currents of supplies (A), for each set of faults on each drawn board. Each solution starts from that of the same faults
 * on the draw before, moved as the healthy board moved. What the meter's own resistance takes off is known from the resistance of the
 * point (the slope of the solved circuit): on the first draw for all where that is below a hundredth of the meter's, otherwise on each; where
 * a junction bends under the meter, the loaded circuit is solved.
 */
export function powered(circuit: Circuit, sets: readonly FaultSet[], draws: readonly Draw[], options: PoweredOptions): Simulated {
  const { state, points, baseline = asWritten(circuit.netlist), profile = HANDHELD_METER, shouldStop = () => false } = options;
  if (draws.length === 0) throw new CircuitError('shape', 'a simulation needs at least one drawn board');
  const bench = makeBench(circuit, baseline, state, SIMULATION_EFFORT, leadsOf(points.filter(hasLeads)));
  const values = emptyValues(sets.length, draws.length, points.length);
  const alike = firstAlike(sets);
  const healthy = healthyStates(bench, draws);
  const row = draws.length * points.length;
  let failures = 0;
  let done = 0;
  for (; done < sets.length && !shouldStop(); done++) {
    const out = values.subarray(done * row, (done + 1) * row);
    const first = alike[done]!;
    if (first < done) out.set(values.subarray(first * row, (first + 1) * row));
    else failures += new PoweredBoard(bench, sets[done]!, points, 1 / profile.volts.inputOhm, healthy).fill(draws, out);
  }
  return { values, shape: [sets.length, draws.length, points.length], failures, done };
}

/** The healthy board of each draw; where one has no answer, that of the draw before. */
function healthyStates(bench: Bench, draws: readonly Draw[]): Float64Array[] {
  let last = new Float64Array(bench.circuit.size + 1);
  const board = new FaultedBoard(bench, [], last);
  return draws.map((draw) => {
    board.take(draw);
    if (board.solver.solve(board.conditions, last)) last = board.solver.x.slice();
    return last;
  });
}

interface MeterLoading {
  readonly shares: Float64Array;
  readonly high: readonly number[];
  readonly bent: readonly number[];
}

class PoweredBoard {
  private readonly board: FaultedBoard;
  private readonly start: Float64Array;
  private readonly carried: Float64Array;
  private readonly red: Int32Array;
  private readonly black: Int32Array;
  /** Points of supplies, with the part that each is. */
  private readonly supplies: readonly { readonly p: number; readonly part: number }[];
  private loading: MeterLoading | undefined;

  constructor(
    bench: Bench,
    set: FaultSet,
    points: readonly PoweredPoint[],
    private readonly meterS: number,
    private readonly healthy: readonly Float64Array[],
  ) {
    this.board = new FaultedBoard(bench, set, healthy[0]!);
    const { circuit } = this.board;
    [this.start, this.carried] = [new Float64Array(circuit.size + 1), new Float64Array(circuit.size + 1)];
    this.red = Int32Array.from(points, (point) => (hasLeads(point) ? unknownOf(circuit, point.red) : circuit.size));
    this.black = Int32Array.from(points, (point) => (hasLeads(point) ? unknownOf(circuit, point.black ?? '0') : circuit.size));
    this.supplies = points.flatMap((point, p) => (hasLeads(point) ? [] : [{ p, part: partOf(circuit, point.supply) }]));
  }

  /** Writes the readings of all draws and returns how many were not found. */
  fill(draws: readonly Draw[], out: Float64Array): number {
    const { board, healthy } = this;
    let failures = 0;
    let solved = -1;
    draws.forEach((draw, d) => {
      board.take(draw);
      board.carry(healthy[d]!, this.carried);
      if (solved < 0) this.start.set(this.carried);
      else this.moveStart(healthy[solved]!);
      if (board.solver.solve(board.conditions, this.start) || board.solver.solve(board.conditions, this.carried)) {
        solved = d;
        this.start.set(board.solver.x);
        this.read(out.subarray(d * this.red.length, (d + 1) * this.red.length));
      } else failures++;
    });
    return failures;
  }

  /** The last solution, moved as the healthy board moved from that draw to this one. */
  private moveStart(before: Float64Array): void {
    const { start, carried } = this;
    for (let i = 0; i < start.length; i++) start[i]! += carried[i]!;
    this.board.carry(before, carried);
    for (let i = 0; i < start.length; i++) start[i]! -= carried[i]!;
  }

  private read(out: Float64Array): void {
    const { x } = this.board.solver;
    for (let p = 0; p < out.length; p++) out[p] = x[this.red[p]!]! - x[this.black[p]!]!;
    const currents = this.supplies.map(({ part }) => currentOut(this.board.circuit, this.board.conditions, part, x));
    // Slopes are those of the unloaded circuit: they are asked for before any loaded one is solved.
    if (this.loading) for (const p of this.loading.high) this.loading.shares[p] = this.shareOf(p);
    const { shares, bent } = (this.loading ??= this.meterLoading(out));
    for (let p = 0; p < out.length; p++) out[p]! /= 1 + shares[p]!;
    for (const p of bent) out[p] = this.loaded(p) ?? out[p]!;
    this.supplies.forEach(({ p }, i) => (out[p] = currents[i]!));
  }

  /** Resistance of each point over that of the meter; which points are high; and at which of those a junction bends under the meter. */
  private meterLoading(open: Float64Array): MeterLoading {
    const shares = open.map((_, p) => this.shareOf(p));
    const straight = this.board.isVaried ? VARIED_SHARE : STRAIGHT_SHARE;
    const high = [...shares.keys()].filter((p) => shares[p]! >= straight && Math.abs(open[p]!) >= LEAST_V);
    const bent = high.filter((p) => {
      if (shares[p]! < STRAIGHT_SHARE) return false;
      const loaded = this.loaded(p);
      return loaded !== undefined && Math.abs(loaded - open[p]! / (1 + shares[p]!)) > STRAIGHT_WITHIN * Math.abs(loaded);
    });
    return { shares, high: high.filter((p) => !bent.includes(p)), bent };
  }

  private shareOf(p: number): number {
    return this.meterS * this.board.solver.resistance(this.red[p]!, this.black[p]!);
  }

  /** The voltage of a point with the meter at it, from the state without. */
  private loaded(p: number): number | undefined {
    const { solver, conditions } = this.board;
    const [red, black] = [this.red[p]!, this.black[p]!];
    if (!solver.solve(conditions, this.start, { red, black, siemens: this.meterS, ampere: 0, complianceV: Infinity })) return undefined;
    return solver.x[red]! - solver.x[black]!;
  }
}

function partOf({ partIndex }: Circuit, name: string): number {
  const part = partIndex.get(name.toLowerCase());
  if (part === undefined) throw new CircuitError('unknown-name', `the netlist has no part "${name}"`);
  return part;
}
