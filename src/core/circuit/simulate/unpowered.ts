import { CircuitError } from '../circuit-error.ts';
import { asWritten, type Circuit } from '../compile.ts';
import type { Conditions } from '../devices/bank.ts';
import type { Effort } from '../effort.ts';
import { UNPOWERED_EFFORT } from '../meter/measure.ts';
import { HANDHELD_METER, type MeterProfile } from '../meter/meter-profile.ts';
import type { PowerState } from '../meter/power-state.ts';
import type { Draw } from './draws.ts';
import { FaultedBoard, firstAlike, leadsOf, makeBench, type Bench, type FaultSet } from './faulted-board.ts';
import { PointMeter, type Reference, type UnpoweredPoint } from './point-meter.ts';
import { SIMULATION_EFFORT } from './powered.ts';
import { quietTest } from './quiet.ts';
import { emptyValues, type Simulated } from './simulated.ts';

export interface UnpoweredOptions {
  readonly points: readonly UnpoweredPoint[];
  readonly switches?: PowerState['switches'];
  readonly baseline?: Conditions;
  readonly profile?: MeterProfile;
  readonly shouldStop?: () => boolean;
}

const EFFORT: Effort = { ...SIMULATION_EFFORT, shuntS: UNPOWERED_EFFORT.shuntS, stepV: UNPOWERED_EFFORT.stepV };

/** A reading of a healthy board with the state that it was taken in. */
interface Healthy extends Reference {
  readonly x: Float64Array;
}

/**
 * Resistances and junction drops that a meter would show on the unpowered board, for each set of faults on each drawn board. Where the faults cannot be
 * seen from a point (`quietTest`) the reading of the healthy board of that draw is taken over; everything else is solved, each point from its
 * own state under the same faults on the draw before, or from that of the healthy board.
 */
export function unpowered(circuit: Circuit, sets: readonly FaultSet[], draws: readonly Draw[], options: UnpoweredOptions): Simulated {
  const { points, baseline = asWritten(circuit.netlist), profile = HANDHELD_METER, shouldStop = () => false, switches = {} } = options;
  if (draws.length === 0) throw new CircuitError('shape', 'a simulation needs at least one drawn board');
  const bench = makeBench(circuit, baseline, { supplies: {}, switches }, EFFORT, leadsOf(points));
  const values = emptyValues(sets.length, draws.length, points.length);
  const alike = firstAlike(sets);
  const healthy = measureHealthy(bench, draws, points, profile);
  const row = draws.length * points.length;
  let failures = 0;
  let done = 0;
  for (; done < sets.length && !shouldStop(); done++) {
    const out = values.subarray(done * row, (done + 1) * row);
    const first = alike[done]!;
    if (first < done) out.set(values.subarray(first * row, (first + 1) * row));
    else failures += new UnpoweredBoard(bench, sets[done]!, points, profile).fill(draws, healthy, out);
  }
  return { values, shape: [sets.length, draws.length, points.length], failures, done };
}

/** By draw and point; undefined where the healthy board has no operating point. */
type HealthyReadings = readonly (readonly (Healthy | undefined)[])[];

function measureHealthy(bench: Bench, draws: readonly Draw[], points: readonly UnpoweredPoint[], profile: MeterProfile): HealthyReadings {
  const rest = new Float64Array(bench.circuit.size + 1);
  const board = new FaultedBoard(bench, [], rest);
  const meter = new PointMeter(board, points, profile);
  const last: (Healthy | undefined)[] = points.map(() => undefined);
  return draws.map((draw) => {
    board.take(draw);
    return points.map((_, p) => {
      const found = meter.measure(p, last[p]?.range ?? 0, last[p]?.x ?? rest);
      last[p] = found && { ...found, finerShare: meter.finerShare(p, found), x: meter.state.slice() };
      return last[p];
    });
  });
}

/** The last solved reading of a point under the same faults: its state, its range, and the healthy reading of the same draw. */
interface Solved {
  readonly x: Float64Array;
  range: number;
  healthy: Healthy | undefined;
}

class UnpoweredBoard {
  private readonly board: FaultedBoard;
  private readonly meter: PointMeter;
  private readonly isQuiet: ReturnType<typeof quietTest>;
  private readonly last: (Solved | undefined)[];
  private readonly start: Float64Array;
  private readonly carried: Float64Array;

  constructor(bench: Bench, set: FaultSet, points: readonly UnpoweredPoint[], profile: MeterProfile) {
    this.board = new FaultedBoard(bench, set, new Float64Array(bench.circuit.size + 1));
    this.meter = new PointMeter(this.board, points, profile);
    this.isQuiet = quietTest(bench.circuit, bench.standing, this.board.changes);
    this.last = points.map(() => undefined);
    const { size } = this.board.circuit;
    [this.start, this.carried] = [new Float64Array(size + 1), new Float64Array(size + 1)];
  }

  /** Writes the readings of all draws and returns how many were not found. */
  fill(draws: readonly Draw[], healthy: HealthyReadings, out: Float64Array): number {
    let failures = 0;
    draws.forEach((draw, d) => {
      this.board.take(draw);
      const row = healthy[d]!;
      for (let p = 0; p < row.length; p++) {
        const value = this.reading(p, row[p]);
        if (value === undefined) failures++;
        else out[d * row.length + p] = value;
      }
    });
    return failures;
  }

  private reading(p: number, healthy: Healthy | undefined): number | undefined {
    if (healthy && this.isQuiet(healthy)) return healthy.value;
    const last = this.last[p];
    this.guess(last, healthy);
    const found = this.meter.measure(p, last?.range ?? healthy?.range ?? 0, this.start, healthy);
    if (!found) return undefined;
    const { state } = this.meter;
    if (last) last.x.set(state);
    this.last[p] = { x: last?.x ?? state.slice(), range: found.range, healthy };
    return found.value;
  }

  /** Fills `start`: the last state, moved as the healthy board moved since in the same range; or the state of the healthy board. */
  private guess(last: Solved | undefined, healthy: Healthy | undefined): void {
    const { start, carried, board } = this;
    if (!last) {
      start.fill(0);
      if (healthy) board.carry(healthy.x, start);
      return;
    }
    start.set(last.x);
    if (!healthy || !last.healthy || healthy.range !== last.healthy.range) return;
    board.carry(healthy.x, carried);
    for (let i = 0; i < start.length; i++) start[i]! += carried[i]!;
    board.carry(last.healthy.x, carried);
    for (let i = 0; i < start.length; i++) start[i]! -= carried[i]!;
  }
}
