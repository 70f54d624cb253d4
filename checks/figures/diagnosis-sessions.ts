import { HANDHELD_METER, meterError, rangeFor } from '../../src/core/circuit/index.ts';
import {
  believeReadings,
  CHANGE_MINUTES,
  groupOfRows,
  nextReadings,
  repeatReading,
  type BelieveOptions,
  type BenchState,
  type RankedReading,
  type ReadingBelief,
  type ReadingEvidence,
  type ReadingPoint,
} from '../../src/core/diagnosis/readings/index.ts';
import type { RandomStream } from '../../src/core/numeric/index.ts';
import type { Stakes } from '../../src/core/diagnosis/index.ts';
import type { Learned } from './diagnosis-board.ts';

/** A board with hidden faults, by index, and what a point of it truly reads; Infinity is OL, undefined is no answer. */
export interface Case {
  readonly faults: readonly number[];
  /** What works when the device is tried. */
  readonly tries: ReadonlyMap<string, boolean>;
  readonly read: (p: number) => number | undefined | Promise<number | undefined>;
}

export const STAKES: Stakes = {
  workingMinor: 9000,
  asIsMinor: 1500,
  hourMinor: 1500,
  openingMinutes: { open: 5, 'board-out': 5 },
  stage: 'board-out',
};
export const AT_FIRST: BenchState = { side: 'front', power: 'off', mode: 'volts' };

/** In the study the faults are inside the model, save where it says otherwise. */
const OPTIONS: BelieveOptions = { unknownRate: 0.02, noneRate: 0.02 };
/** It is sure enough at this belief in one group. */
const SURE = 0.9;
export const MOST_PROBES = 40;
const LEAST_BITS = 0.02;

/** What a person writes down: a handheld meter anywhere within its limits, rounded to its last digit. */
export function shownBy(mode: ReadingPoint['mode'], value: number, random: RandomStream): number | null {
  if (!Number.isFinite(value)) return null;
  const shown = value + (2 * random() - 1) * meterError(HANDHELD_METER, mode, value);
  const { resolution } = rangeFor(HANDHELD_METER, mode, shown);
  return Math.round(shown / resolution) * resolution;
}

export interface Advice {
  /** Whether the likeliest group is that of the truth. */
  readonly right: boolean;
  readonly chance: number;
  /** Whether one of the three likeliest sets has a fault of the group of each of the truth. */
  readonly named: boolean;
}

export interface Session {
  readonly belief: ReadingBelief;
  readonly probes: number;
  readonly minutes: number;
  /** By number of probes from 0. */
  readonly advices: readonly Advice[];
  /** Engine only: from a reading to the next check; simulated pairs apart. */
  readonly milliseconds: readonly number[];
  /** The same without the simulation of pairs of faults. */
  readonly thinkingMs: readonly number[];
}

/** How a session goes: by the advice that tells most, by the advice in money until acting is worth more, or in a fixed order. */
export interface Way {
  readonly choose: 'most-told' | 'advice' | readonly number[];
  /** Share of readings that are of some other point of the same mode. */
  readonly wrongShare?: number;
  /** Begins with the probe, the device is not tried before. */
  readonly readsOnly?: boolean;
  /** Goes on while a reading tells something, however sure it is of one fault: for units that may have two. */
  readonly goesOn?: boolean;
}

/** All trials of the device, each of them noted the wrong way round with this chance. */
function tried({ tries }: Case, random: RandomStream, wrongShare: number): ReadingEvidence[] {
  return [...tries].map(([name, works]) => {
    const seemsToWork = random() < wrongShare ? !works : works;
    return { id: `try ${name}`, kind: 'function', function: name, outcome: seemsToWork ? 'works' : 'fails' };
  });
}

/** The simulator of the truth found no operating point. */
export class NoAnswer extends Error {}

/** Minutes to a point in a fixed order, by the same changes that the advice counts. */
function reachMinutes(point: ReadingPoint, bench: BenchState): number {
  const turn = point.side !== 'both' && point.side !== bench.side ? CHANGE_MINUTES.side : 0;
  return (
    point.minutes + turn + (point.power === bench.power ? 0 : CHANGE_MINUTES.power) + (point.mode === bench.mode ? 0 : CHANGE_MINUTES.mode)
  );
}

type Told = Pick<RankedReading, 'point' | 'minutes' | 'bits'>;

export class Bench {
  readonly groups: Int32Array;

  private simulating = 0;
  readonly learned: Learned;

  constructor(learned: Learned) {
    const { simulate } = learned.baseline;
    const timed: typeof simulate = (pairs, points) => {
      const started = performance.now();
      const values = simulate!(pairs, points);
      this.simulating += performance.now() - started;
      return values;
    };
    this.learned = { ...learned, baseline: { ...learned.baseline, simulate: timed } };
    this.groups = groupOfRows(learned.baseline);
  }

  believe(evidence: readonly ReadingEvidence[]): ReadingBelief {
    return believeReadings([{ baseline: this.learned.baseline, evidence }], OPTIONS);
  }

  /** Measures until it is sure of one group, nothing more is told, acting is worth more (by advice), or 40 readings are taken. */
  async follow(truth: Case, random: RandomStream, way: Way): Promise<Session> {
    const evidence: ReadingEvidence[] = way.readsOnly ? [] : tried(truth, random, way.wrongShare ?? 0);
    const trials = evidence.length;
    const [milliseconds, thinkingMs, advices]: [number[], number[], Advice[]] = [[], [], []];
    let [bench, minutes] = [AT_FIRST, 0];
    for (;;) {
      const started = performance.now();
      this.simulating = 0;
      const belief = this.believe(evidence);
      const next = this.choose(belief, evidence, bench, way);
      const elapsed = performance.now() - started;
      milliseconds.push(elapsed);
      thinkingMs.push(elapsed - this.simulating);
      const top = this.topGroup(belief);
      advices.push({
        right: top.group === this.groups[truth.faults[0]! + 1],
        chance: top.chance,
        named: this.namesAll(belief, truth.faults),
      });
      if (!next || evidence.length - trials >= MOST_PROBES || (!way.goesOn && way.choose !== 'advice' && top.chance >= SURE))
        return { belief, probes: evidence.length - trials, minutes, advices, milliseconds, thinkingMs };
      minutes += next.minutes;
      bench = { side: next.point.side === 'both' ? bench.side : next.point.side, power: next.point.power, mode: next.point.mode };
      evidence.push({
        id: `${evidence.length}`,
        kind: 'reading',
        point: next.point.id,
        value: await this.measure(truth, next.point, random, way.wrongShare ?? 0),
      });
    }
  }

  private async measure(truth: Case, point: ReadingPoint, random: RandomStream, wrongShare: number): Promise<number | null> {
    const { points } = this.learned.board;
    const alike = points.flatMap(({ mode }, p) => (mode === point.mode ? [p] : []));
    const at = random() < wrongShare ? alike[Math.floor(random() * alike.length)]! : points.indexOf(point);
    const value = await truth.read(at);
    if (value === undefined) throw new NoAnswer();
    return shownBy(point.mode, value, random);
  }

  private choose(belief: ReadingBelief, evidence: readonly ReadingEvidence[], bench: BenchState, { choose }: Way) {
    const { board, baseline, bands } = this.learned;
    const skip = new Set(evidence.flatMap((each) => (each.kind === 'reading' ? [each.point] : [])));
    const asked = { belief, baseline, bands, remedies: board.remedies, stakes: STAKES, bench, skip };
    const next = nextReadings(asked, 12);
    if (choose === 'advice') return next.act ? undefined : next.ranked[0];
    if (choose === 'most-told') {
      const again = repeatReading([{ baseline, evidence }], OPTIONS, asked);
      const told: readonly Told[] = [...next.ranked, ...(again ? [again] : [])];
      const best = told.reduce((a, b) => (b.bits > a.bits ? b : a));
      return best.bits >= LEAST_BITS ? best : undefined;
    }
    const p = choose.find((at) => !skip.has(board.points[at]!.id));
    return p === undefined ? undefined : { point: board.points[p]!, minutes: reachMinutes(board.points[p]!, bench) };
  }

  /**
   * The group of faults of which one is likeliest to be there, alone or with another fault, and that chance. A unit that reads like a healthy one has no fault of
   * another group.
   */
  topGroup({ weights }: ReadingBelief): { group: number; chance: number } {
    const { draws, rows, pairs, ofPairs } = weights;
    const chances = new Float64Array(this.groups.length);
    for (let i = 0; i < rows.length; i++) chances[this.groups[Math.floor(i / draws)]!]! += rows[i]!;
    for (let i = 0; i < ofPairs.length; i++) {
      const [a, b] = pairs[Math.floor(i / draws)]!.map((row) => this.groups[row]!) as [number, number];
      if (a !== 0 || b === 0) chances[a]! += ofPairs[i]!;
      if (b !== 0 && b !== a) chances[b]! += ofPairs[i]!;
    }
    const group = chances.reduce((best, chance, each) => (chance > chances[best]! ? each : best), 0);
    return { group, chance: chances[group]! };
  }

  /** Whether one of the three likeliest sets has a fault of the group of each of these. */
  namesAll(belief: ReadingBelief, truth: readonly number[]): boolean {
    const index = new Map(this.learned.board.faults.map(({ id }, i) => [id, i]));
    const groupsOf = (faults: readonly number[]): number[] => faults.map((fault) => this.groups[fault + 1]!).sort((a, b) => a - b);
    const wanted = groupsOf(truth).join();
    return this.distinctSets(belief, index).slice(0, 3).includes(wanted);
  }

  /** Sets as groups, likeliest first, those of the same groups added up. */
  private distinctSets(belief: ReadingBelief, index: ReadonlyMap<string, number>): string[] {
    const chances = new Map<string, number>();
    for (const { faults, chance } of belief.sets) {
      const key = faults
        .map((id) => this.groups[index.get(id)! + 1]!)
        .sort((a, b) => a - b)
        .join();
      chances.set(key, (chances.get(key) ?? 0) + chance);
    }
    return [...chances].sort((a, b) => b[1] - a[1]).map(([key]) => key);
  }

  /** By row; pairs count for both. */
  chances(belief: ReadingBelief): Float64Array {
    return Float64Array.from([belief.none, ...belief.marginal.values()]);
  }

  /** Parts by the chance that a fault of theirs is there, likeliest first. */
  parts(belief: ReadingBelief): string[] {
    const chances = new Map<string, number>();
    for (const { id, part } of this.learned.board.faults) chances.set(part, (chances.get(part) ?? 0) + belief.marginal.get(id)!);
    return [...chances].sort((a, b) => b[1] - a[1]).map(([part]) => part);
  }
}
