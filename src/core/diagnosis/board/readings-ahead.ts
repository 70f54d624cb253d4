import type { Outcome } from '../check-outcomes.ts';
import { METER_SCALES } from '../meter-scale.ts';
import { meanOver } from '../posterior-over-sets.ts';
import type { ReadingsAhead } from '../next-checks.ts';
import { CHANGE_MINUTES, type BenchState } from '../readings/next-readings.ts';
import { LEAK } from '../readings/likelihood.ts';
import { bandOf, inverse, MIXED, UNSEEN, type OutcomeBands } from '../readings/outcome-bands.ts';
import { OutcomeShares, UNKNOWN_MOVED } from '../readings/outcome-shares.ts';
import type { Baseline } from '../readings/index.ts';
import type { BoardBelief } from './believe-board.ts';
import { asMeasured } from './recentre.ts';
import type { LikelyPart } from './likely-part.ts';
import { boardPointIndex, heldByCircuit, type BoardSense } from './board-sense.ts';

/** Readings that may be taken next on a device whose circuit is known. */
export class BoardReadingsAhead implements ReadingsAhead {
  private readonly kept = new Map<string, readonly Outcome[]>();

  private readonly belief: BoardBelief;

  /** `read` are points that were read since the last change, which tell little again. */
  constructor(
    private readonly sense: BoardSense,
    private readonly bands: OutcomeBands,
    private readonly likely: LikelyPart,
    private readonly bench: BenchState,
    private readonly read: ReadonlySet<string>,
  ) {
    this.belief = likely.belief;
  }

  outcomesAt(point: string): readonly Outcome[] | undefined {
    const p = boardPointIndex(this.sense, point);
    if (p < 0 || this.read.has(point)) return undefined;
    const known = this.kept.get(point) ?? this.outcomes(p);
    this.kept.set(point, known);
    return known;
  }

  minutesAt(id: string): number | undefined {
    const point = this.sense.baseline.kernels.dictionary.points.find((each) => each.id === id);
    if (!point) return undefined;
    const turn = point.side !== 'both' && point.side !== this.bench.side ? CHANGE_MINUTES.side : 0;
    const power = point.power !== this.bench.power ? CHANGE_MINUTES.power : 0;
    const mode = point.mode !== this.bench.mode ? CHANGE_MINUTES.mode : 0;
    return Math.max(0.1, point.minutes + turn + power + mode);
  }

  /** Points that tell most bits per minute, best first; `opening` are the minutes to get to one, `skip` those not to be asked for. */
  mostTelling(limit: number, opening: (point: string) => number, skip: ReadonlySet<string>): string[] {
    const { points } = this.sense.baseline.kernels.dictionary;
    const shares = new OutcomeShares(this.asRows(), this.sense.baseline.kernels, this.bands);
    return [...points.keys()]
      .filter((p) => !skip.has(points[p]!.id) && !this.read.has(points[p]!.id))
      .map((p) => ({ id: points[p]!.id, rate: shares.bits(p) / (this.minutesAt(points[p]!.id)! + opening(points[p]!.id)) }))
      .sort((a, b) => b.rate - a.rate)
      .slice(0, limit)
      .map(({ id }) => id);
  }

  /** The belief over the rows of the dictionary alone; a fault that is not in it reads as a healthy board. */
  private asRows(): ConstructorParameters<typeof OutcomeShares>[0] {
    const { space, byDraw, draws } = this.belief;
    const held = heldByCircuit(this.sense);
    const rows = new Float64Array((1 + held) * draws);
    const pairs: [number, number][] = [];
    const ofPairs: number[] = [];
    for (let s = 0; s < space.unknown; s++) {
      const [a, b] = [this.rowOf(space.first[s]!), this.rowOf(space.second[s]!)];
      const own = byDraw.subarray(s * draws, (s + 1) * draws);
      if (a > 0 && b > 0) {
        pairs.push([a, b]);
        ofPairs.push(...own);
      } else for (let d = 0; d < draws; d++) rows[Math.max(a, b) * draws + d]! += own[d]!;
    }
    const unknown = byDraw.slice(space.unknown * draws);
    return { draws, rows, pairs, ofPairs: Float64Array.from(ofPairs), unknown };
  }

  /** Row of a fault in the dictionary; 0 where the circuit does not hold it. */
  private rowOf(fault: number): number {
    const place = this.likely.places[fault];
    return place !== undefined && place < heldByCircuit(this.sense) ? 1 + place : 0;
  }

  private outcomes(p: number): Outcome[] {
    const kinds = this.bands.count[p]! + 1;
    const shares = this.sharesByState(p, kinds);
    const { space, weights } = this.belief;
    return Array.from({ length: kinds }, (_, k): Outcome => {
      const likelihood = Float64Array.from({ length: space.size }, (__, s) => (1 - LEAK) * shares[s * kinds + k]! + LEAK / kinds);
      const range = this.range(p, k);
      return { outcome: range[0] === Infinity ? 'OL' : 'number', chance: meanOver(weights, likelihood), likelihood, range };
    });
  }

  /** Share of each band, by state; those of a state sum to 1. */
  private sharesByState(p: number, kinds: number): Float64Array {
    const { space } = this.belief;
    const { far, rows } = this.sense.baseline.kernels;
    const { places } = this.likely;
    const result = new Float64Array(space.size * kinds);
    const put = (s: number, row: number): void => this.shareOfRow(p, s, row, kinds, result);
    for (let s = 0; s < space.unknown; s++) {
      const [a, b] = [this.rowOf(space.first[s]!), this.rowOf(space.second[s]!)];
      const with1 = this.sense.withFault.get(places[space.first[s]!]!);
      const with2 = this.sense.withFault.get(places[space.second[s]!]!);
      if (b > 0 && with1) this.shareOn(with1, p, s, b, kinds, result);
      else if (b > 0 && a > 0 && with2) this.shareOn(with2, p, s, a, kinds, result);
      else put(s, far[p * rows + a]! >= far[p * rows + b]! ? a : b);
    }
    put(space.unknown, 0);
    for (let k = 0; k < kinds; k++) {
      const at = space.unknown * kinds + k;
      result[at] = (1 - UNKNOWN_MOVED) * result[at]! + UNKNOWN_MOVED / kinds;
    }
    return result;
  }

  private shareOfRow(p: number, s: number, row: number, kinds: number, result: Float64Array): void {
    const { bands, belief, sense } = this;
    const cell = p * sense.baseline.kernels.rows + row;
    const same = bands.same[cell]!;
    if (same !== MIXED) result[s * kinds + same] = 1;
    else this.byDraws(s, kinds, result, (d) => bands.band[cell * belief.draws + d]!);
  }

  /** The same for a board that has another fault already. */
  private shareOn({ kernels }: Baseline, p: number, s: number, row: number, kinds: number, result: Float64Array): void {
    const { points, values, draws } = kernels.dictionary;
    const { of } = METER_SCALES[points[p]!.mode];
    this.byDraws(s, kinds, result, (d) => {
      const value = values[(row * draws + d) * points.length + p]!;
      if (Number.isNaN(value)) return UNSEEN;
      return value === Infinity ? kinds - 1 : bandOf(this.bands.edges[p]!, of(value));
    });
  }

  private byDraws(s: number, kinds: number, result: Float64Array, bandAt: (draw: number) => number): void {
    const { byDraw, draws, weights } = this.belief;
    for (let d = 0; d < draws; d++) {
      const share = weights[s]! > 0 ? byDraw[s * draws + d]! / weights[s]! : 1 / draws;
      const band = bandAt(d);
      if (band !== UNSEEN) result[s * kinds + band]! += share;
      else for (let k = 0; k < kinds; k++) result[s * kinds + k]! += share / kinds;
    }
  }

  private range(p: number, k: number): readonly [number, number] {
    const edges = this.bands.edges[p]!;
    if (k > edges.length) return [Infinity, Infinity];
    const { mode } = this.sense.baseline.kernels.dictionary.points[p]!;
    const bottom = mode === 'volts' || mode === 'diode' ? -Infinity : 0;
    const edge = (x: number): number => asMeasured(this.sense, p, inverse(mode, x));
    return [k === 0 ? bottom : edge(edges[k - 1]!), k === edges.length ? Infinity : edge(edges[k]!)];
  }
}
