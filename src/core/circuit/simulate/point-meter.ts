import type { MeterProfile } from '../meter/meter-profile.ts';
import { unknownOf } from '../meter/measure.ts';
import type { FaultedBoard, LeadsAt } from './faulted-board.ts';

export interface UnpoweredPoint extends LeadsAt {
  readonly mode: 'ohms' | 'diode';
}

/** A reading, Infinity for OL, with the range that it was found in, the test current, A, and the voltage across the leads, V. */
export interface Found {
  readonly value: number;
  readonly range: number;
  readonly ampere: number;
  readonly volt: number;
}

/** A meter at the points of one unpowered board. */
export class PointMeter {
  /** State of the circuit at the last reading. */
  readonly state: Float64Array;
  private readonly red: Int32Array;
  private readonly black: Int32Array;

  constructor(
    private readonly board: FaultedBoard,
    private readonly points: readonly UnpoweredPoint[],
    private readonly profile: MeterProfile,
  ) {
    const { circuit } = board;
    this.state = new Float64Array(circuit.size + 1);
    this.red = Int32Array.from(points, ({ red }) => unknownOf(circuit, red));
    this.black = Int32Array.from(points, ({ black = '0' }) => unknownOf(circuit, black));
  }

  /** Measures a point; undefined where no operating point is found. `near` is the range to look about, `start` a state in that range. */
  measure(p: number, near: number, start: Float64Array): Found | undefined {
    return this.points[p]!.mode === 'diode' ? this.drive(p, 'diode', 0, start) : this.ohms(p, near, start);
  }

  /**
   * The finest range that holds the reading. The search begins a range below `near`: down while ranges hold it, or else up until one does.
   */
  private ohms(p: number, near: number, start: Float64Array): Found | undefined {
    const { ranges } = this.profile.ohms;
    let range = Math.max(near - 1, 0);
    let found = this.drive(p, 'ohms', range, start);
    if (found && found.value !== Infinity) return this.finer(p, found);
    while (found && found.value === Infinity && ++range < ranges.length)
      found = this.drive(p, 'ohms', range, range === near ? start : this.state);
    return found;
  }

  private finer(p: number, found: Found): Found {
    let best = found;
    while (best.range > 0) {
      const kept = this.state.slice();
      const next = this.drive(p, 'ohms', best.range - 1, kept);
      if (next && next.value !== Infinity) best = next;
      else {
        this.state.set(kept);
        return best;
      }
    }
    return best;
  }

  private drive(p: number, mode: 'ohms' | 'diode', range: number, start: Float64Array): Found | undefined {
    const { solver, conditions } = this.board;
    const { complianceV, ranges } = this.profile[mode];
    const { testA: ampere, upTo } = ranges[range]!;
    const [red, black] = [this.red[p]!, this.black[p]!];
    if (!solver.solve(conditions, start, { red, black, siemens: 0, ampere, complianceV })) return undefined;
    this.state.set(solver.x);
    const volt = solver.x[red]! - solver.x[black]!;
    const value = mode === 'diode' ? volt : volt / ampere;
    return { value: volt > complianceV || value > upTo ? Infinity : value, range, ampere, volt };
  }
}
