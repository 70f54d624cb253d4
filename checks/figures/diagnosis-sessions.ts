import { HANDHELD_METER, meterError, rangeFor } from '../../src/core/circuit/index.ts';
import {
  believeReadings,
  groupOfRows,
  nextReadings,
  type BelieveOptions,
  type BenchState,
  type ReadingBelief,
  type ReadingEvidence,
} from '../../src/core/diagnosis/readings/index.ts';
import type { RandomStream } from '../../src/core/numeric/index.ts';
import type { Stakes } from '../../src/core/diagnosis/index.ts';
import type { Learned } from './diagnosis-board.ts';

/** A board with hidden faults, by index, and what each point of it truly reads; Infinity is OL. */
export interface Case {
  readonly faults: readonly number[];
  readonly values: Float64Array;
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
const SURE = 0.95;
const MOST_PROBES = 40;
const LEAST_BITS = 0.02;

/** What a person writes down: a handheld meter anywhere within its limits, rounded to its last digit; some readings are of a wrong pin. */
export function readMeter(learned: Learned, { values }: Case, p: number, random: RandomStream, wrongShare = 0): number | null {
  const { points } = learned.board;
  const { mode } = points[p]!;
  const same = points.flatMap((point, i) => (point.mode === mode ? [i] : []));
  const at = random() < wrongShare ? same[Math.floor(random() * same.length)]! : p;
  const value = values[at]!;
  if (!Number.isFinite(value)) return null;
  const shown = value + (2 * random() - 1) * meterError(HANDHELD_METER, mode, value);
  const { resolution } = rangeFor(HANDHELD_METER, mode, shown);
  return Math.round(shown / resolution) * resolution;
}

export interface Session {
  readonly belief: ReadingBelief;
  readonly probes: number;
  /** By number of probes from 0: whether the likeliest group is that of the truth. */
  readonly right: readonly boolean[];
  readonly atEight: boolean;
  readonly groupChance: number;
  readonly milliseconds: readonly number[];
}

export class Bench {
  readonly groups: Int32Array;

  constructor(readonly learned: Learned) {
    this.groups = groupOfRows(learned.baseline);
  }

  believe(evidence: readonly ReadingEvidence[], pairs?: number): ReadingBelief {
    return believeReadings([{ baseline: this.learned.baseline, evidence }], pairs === undefined ? OPTIONS : { ...OPTIONS, pairs });
  }

  /** Follows the advice until one group is believed, nothing more is told, or 40 readings are taken. */
  follow(truth: Case, random: RandomStream, wrongShare = 0): Session {
    const { board, baseline, bands } = this.learned;
    const evidence: ReadingEvidence[] = [];
    const skip = new Set<string>();
    const milliseconds: number[] = [];
    const right: boolean[] = [];
    let bench = AT_FIRST;
    let belief = this.believe(evidence);
    for (;;) {
      const started = performance.now();
      if (evidence.length > 0) belief = this.believe(evidence);
      const next = nextReadings({ belief, baseline, bands, remedies: board.remedies, stakes: STAKES, bench, skip }, 3);
      milliseconds.push(performance.now() - started);
      const top = this.topGroup(belief);
      right.push(top.group === this.groups[truth.faults[0]! + 1]);
      const best = next.ranked.reduce((a, b) => (b.bits > a.bits ? b : a));
      if (top.chance >= SURE || evidence.length >= MOST_PROBES || best.bits < LEAST_BITS)
        return { belief, probes: evidence.length, right, atEight: right[Math.min(8, right.length - 1)]!, groupChance: top.chance, milliseconds };
      const { point } = best;
      skip.add(point.id);
      const value = readMeter(this.learned, truth, board.points.indexOf(point), random, wrongShare);
      evidence.push({ id: `${evidence.length}`, kind: 'reading', point: point.id, value });
      bench = { side: point.side === 'both' ? bench.side : point.side, power: point.power, mode: point.mode };
    }
  }

  topGroup(belief: ReadingBelief): { group: number; chance: number } {
    const { draws, rows } = belief.weights;
    const chances = new Map<number, number>();
    for (let i = 0; i < rows.length; i++) {
      const group = this.groups[Math.floor(i / draws)]!;
      chances.set(group, (chances.get(group) ?? 0) + rows[i]!);
    }
    return [...chances].map(([group, chance]) => ({ group, chance })).reduce((a, b) => (b.chance > a.chance ? b : a));
  }

  /** Parts by the chance that a fault of theirs is there, likeliest first. */
  parts(belief: ReadingBelief): string[] {
    const chances = new Map<string, number>();
    for (const { id, part } of this.learned.board.faults) chances.set(part, (chances.get(part) ?? 0) + belief.marginal.get(id)!);
    return [...chances].sort((a, b) => b[1] - a[1]).map(([part]) => part);
  }
}
