import { CircuitError } from '../circuit-error.ts';
import { asWritten, type Circuit } from '../compile.ts';
import type { Conditions } from '../devices/bank.ts';
import type { Effort } from '../effort.ts';
import { UNPOWERED_EFFORT } from '../meter/measure.ts';
import { HANDHELD_METER, type MeterProfile } from '../meter/meter-profile.ts';
import type { PowerState } from '../meter/power-state.ts';
import type { Draw } from './draws.ts';
import { FaultedBoard, firstAlike, leadsOf, makeBench, type Bench, type FaultSet } from './faulted-board.ts';
import { PointMeter, type Found, type UnpoweredPoint } from './point-meter.ts';
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

const EFFORT: Effort = { ...SIMULATION_EFFORT, shuntS: UNPOWERED_EFFORT.shuntS, stepV: 0.4 };

/** A reading of a healthy board with the state that it was taken in. */
interface Healthy extends Found {
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
      const found = meter.measure(p, last[p]?.range ?? 1, last[p]?.x ?? rest);
      last[p] = found && { ...found, x: meter.state.slice() };
      return last[p];
    });
  });
}

class UnpoweredBoard {
  private readonly board: FaultedBoard;
  private readonly meter: PointMeter;
  private readonly isQuiet: ReturnType<typeof quietTest>;
  /** By point: the state at its last solved reading, and the range of that. */
  private readonly last: ({ x: Float64Array; range: number } | undefined)[];
  private readonly carried: Float64Array;

  constructor(bench: Bench, set: FaultSet, points: readonly UnpoweredPoint[], profile: MeterProfile) {
    this.board = new FaultedBoard(bench, set, new Float64Array(bench.circuit.size + 1));
    this.meter = new PointMeter(this.board, points, profile);
    this.isQuiet = quietTest(bench.circuit, this.board.changes);
    this.last = points.map(() => undefined);
    this.carried = new Float64Array(this.board.circuit.size + 1);
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
    const start = last?.x ?? this.carried;
    if (!last && healthy) this.board.carry(healthy.x, this.carried);
    const found = this.meter.measure(p, last?.range ?? healthy?.range ?? 1, start);
    if (!found) return undefined;
    if (last) last.x.set(this.meter.state);
    this.last[p] = { x: last?.x ?? this.meter.state.slice(), range: found.range };
    return found.value;
  }
}
