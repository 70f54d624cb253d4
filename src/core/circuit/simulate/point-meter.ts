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

/** A reading of a like board, and what it becomes in the next finer range, as a share of itself. */
export interface Reference extends Found {
  readonly finerShare: number;
}

/** Two readings are alike within this share; and a range is out of reach where a reading is so many times past its end. */
const LIKENESS = 0.3;
const FINER_MARGIN = 1.2;

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

  /**
   * Measures a point; undefined where no operating point is found. `start` is a state in the range that it will probably be found in, `like` a reading
   * that this one may be like: what such a reading does in the next finer range is then not asked again.
   */
  measure(p: number, near: number, start: Float64Array, like?: Reference): Found | undefined {
    return this.points[p]!.mode === 'diode' ? this.drive(p, 'diode', 0, start) : this.ohms(p, near, start, like);
  }

  /** The finest range that holds the reading. The search begins at `near`: down while ranges hold it, or else up until one does. */
  private ohms(p: number, near: number, start: Float64Array, like: Reference | undefined): Found | undefined {
    const { ranges } = this.profile.ohms;
    let found = this.drive(p, 'ohms', near, start);
    if (found && found.value !== Infinity) return like && this.isOutOfFiner(found, like) ? found : this.finer(p, found);
    for (let range = near + 1; found && found.value === Infinity && range < ranges.length; range++)
      found = this.drive(p, 'ohms', range, this.state);
    return found;
  }

  /** What a reading becomes in the next finer range, as a share of itself; 1 where there is none. The state stays. */
  finerShare(p: number, found: Found): number {
    if (this.points[p]!.mode === 'diode' || found.range === 0 || found.value === Infinity) return 1;
    const kept = this.state.slice();
    const next = this.drive(p, 'ohms', found.range - 1, kept);
    this.state.set(kept);
    return next ? next.volt / next.ampere / found.value : 1;
  }

  /** Whether the next finer range is out of reach by a good margin, for a reading in the range of a like one. */
  private isOutOfFiner({ range, value }: Found, like: Reference): boolean {
    if (range === 0) return true;
    if (range !== like.range || Math.abs(value / like.value - 1) > LIKENESS) return false;
    return value * like.finerShare > FINER_MARGIN * this.profile.ohms.ranges[range - 1]!.upTo;
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
