import { CircuitError } from '../circuit-error.ts';
import { asWritten, type Circuit } from '../compile.ts';
import type { Conditions } from '../devices/bank.ts';
import { DEFAULT_EFFORT, type Effort } from '../effort.ts';
import { unknownOf } from '../meter/measure.ts';
import { HANDHELD_METER, type MeterProfile } from '../meter/meter-profile.ts';
import type { PowerState } from '../meter/power-state.ts';
import type { Draw } from './draws.ts';
import { FaultedBoard, firstAlike, leadsOf, makeBench, type Bench, type FaultSet, type LeadsAt } from './faulted-board.ts';
import { emptyValues, type Simulated } from './simulated.ts';

export interface PoweredOptions {
  readonly state: PowerState;
  readonly points: readonly LeadsAt[];
  readonly baseline?: Conditions;
  readonly profile?: MeterProfile;
  readonly shouldStop?: () => boolean;
}

/**
 * Effort of a simulation: a step of 0.2 mV is the last one, because what it leaves is its square over the thermal voltage, below 1 µV, where a meter
 * shows 1 mV.
 */
export const SIMULATION_EFFORT: Effort = { ...DEFAULT_EFFORT, absoluteV: 2e-4, absoluteA: 1e-5, relative: 1e-4 };

/** Above this share of the meter's own resistance that of the point is too high for a straight line, and the loaded circuit is solved. */
const STRAIGHT_SHARE = 0.01;
/** Below this voltage a reading has no ratio to its unloaded self, V. */
const LEAST_V = 1e-3;

/**
 * Voltages that a meter would show in one power state, for each set of faults on each drawn board. The meter's own resistance is taken off by
 * the ratio of the loaded to the unloaded voltage on the first draw: by the resistance of the point (the slope of the solved circuit) where
 * that is below a hundredth of the meter's, otherwise by solving the loaded circuit. Each solution starts from that of the same faults on the
 * draw before, moved as the healthy board moved.
 */
export function powered(circuit: Circuit, sets: readonly FaultSet[], draws: readonly Draw[], options: PoweredOptions): Simulated {
  const { state, points, baseline = asWritten(circuit.netlist), profile = HANDHELD_METER, shouldStop = () => false } = options;
  if (draws.length === 0) throw new CircuitError('shape', 'a simulation needs at least one drawn board');
  const bench = makeBench(circuit, baseline, state, SIMULATION_EFFORT, leadsOf(points));
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

class PoweredBoard {
  private readonly board: FaultedBoard;
  private readonly start: Float64Array;
  private readonly carried: Float64Array;
  private readonly red: Int32Array;
  private readonly black: Int32Array;
  private ratios: Float64Array | undefined;

  constructor(
    bench: Bench,
    set: FaultSet,
    points: readonly LeadsAt[],
    private readonly meterS: number,
    private readonly healthy: readonly Float64Array[],
  ) {
    this.board = new FaultedBoard(bench, set, healthy[0]!);
    const { circuit } = this.board;
    [this.start, this.carried] = [new Float64Array(circuit.size + 1), new Float64Array(circuit.size + 1)];
    this.red = Int32Array.from(points, ({ red }) => unknownOf(circuit, red));
    this.black = Int32Array.from(points, ({ black = '0' }) => unknownOf(circuit, black));
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
    this.ratios ??= this.loadRatios(out);
    for (let p = 0; p < out.length; p++) out[p]! *= this.ratios[p]!;
  }

  /** Loaded over unloaded voltage of each point. */
  private loadRatios(open: Float64Array): Float64Array {
    const { solver, conditions } = this.board;
    const unloaded = this.start;
    const shares = open.map((_, p) => this.meterS * solver.resistance(this.red[p]!, this.black[p]!));
    return shares.map((share, p) => {
      const straight = 1 / (1 + share);
      if (share < STRAIGHT_SHARE || Math.abs(open[p]!) < LEAST_V) return straight;
      const [red, black] = [this.red[p]!, this.black[p]!];
      if (!solver.solve(conditions, unloaded, { red, black, siemens: this.meterS, ampere: 0, complianceV: Infinity })) return straight;
      return (solver.x[red]! - solver.x[black]!) / open[p]!;
    });
  }
}
