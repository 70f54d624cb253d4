import { describe, expect, it } from 'vitest';
import {
  believeReadings,
  kernelsOf,
  nextReadings,
  outcomeBands,
  type Baseline,
  type ReadingEvidence,
  type ReadingFault,
  type ReadingPoint,
} from '../../src/core/diagnosis/readings/index.ts';

const STAKES = { workingMinor: 0, asIsMinor: 0, hourMinor: 0, openingMinutes: { open: 0, 'board-out': 0 }, stage: 'open' } as const;
const BENCH = { side: 'front', power: 'on', mode: 'volts' } as const;

/** A row of buffers of which one is dead: every output from it on reads nothing. */
function cascade(n: number): Baseline {
  const faults = Array.from({ length: n }, (_, i): ReadingFault => ({ id: `b${i}`, block: 'row', part: `b${i}`, rate: 1 / n }));
  const points = Array.from({ length: n - 1 }, (_, i): ReadingPoint => ({
    id: `out${i}`,
    mode: 'volts',
    minutes: 1,
    side: 'front',
    stage: 'open',
    power: 'on',
  }));
  const values = Float64Array.from({ length: (n + 1) * (n - 1) }, (_, i) => (truth(Math.floor(i / (n - 1)) - 1, i % (n - 1)) ? 0 : 3));
  return { kernels: kernelsOf({ faults, points, draws: 1, values }, () => 0.01), functions: new Map() };
}

const truth = (dead: number, output: number): boolean => dead >= 0 && output >= dead;

/** The exercise knows that there is exactly one: nothing wrong, something else and a second one are left out. */
function probesToFind(dead: number, baseline: Baseline): number {
  const evidence: ReadingEvidence[] = [];
  const bands = outcomeBands(baseline.kernels);
  for (;;) {
    const belief = believeReadings([{ baseline, evidence }], { unknownRate: 0, noneRate: 0, pairs: 0 });
    const [best] = belief.sets;
    if (best!.chance > 0.9) {
      expect(best!.faults).toEqual([`b${dead}`]);
      return evidence.length;
    }
    const skip = new Set(evidence.map((each) => (each.kind === 'reading' ? each.point : '')));
    const { point } = nextReadings({ belief, baseline, bands, remedies: [], stakes: STAKES, bench: BENCH, skip }).ranked[0]!;
    evidence.push({ id: `${evidence.length}`, kind: 'reading', point: point.id, value: truth(dead, Number(point.id.slice(3))) ? 0 : 3 });
  }
}

describe('one dead buffer in a row of equally likely ones', () => {
  it.each([
    [3, 5 / 3],
    [8, 3],
    [16, 4],
  ])('of %i is found in %f probes in the mean, by halves', (n, mean) => {
    const baseline = cascade(n);
    const probes = Array.from({ length: n }, (_, dead) => probesToFind(dead, baseline));
    expect(probes.reduce((sum, count) => sum + count, 0) / n).toBeCloseTo(mean, 10);
  });
});
