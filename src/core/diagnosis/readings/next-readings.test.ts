import { describe, expect, it } from 'vitest';
import { believeReadings } from './believe-readings.ts';
import type { ReadingEvidence } from './evidence.ts';
import { faultGroups } from './fault-groups.ts';
import { nextReadings, type BenchState } from './next-readings.ts';
import { outcomeBands } from './outcome-bands.ts';
import { ladder, LADDER_REMEDIES, LADDER_STAKES } from './testing/ladder.ts';

const BASELINE = ladder();
const BANDS = outcomeBands(BASELINE.kernels);
const believe = (evidence: readonly ReadingEvidence[]) =>
  believeReadings([{ baseline: BASELINE, evidence }], { unknownRate: 0.02, noneRate: 0.02 });

function next(evidence: readonly ReadingEvidence[], options: { bench?: BenchState; hourMinor?: number; skip?: ReadonlySet<string> } = {}) {
  const { bench = { side: 'front', power: 'on', mode: 'volts' }, hourMinor = 1800, skip } = options;
  const stakes = { ...LADDER_STAKES, hourMinor };
  const choice = { belief: believe(evidence), baseline: BASELINE, bands: BANDS, remedies: LADDER_REMEDIES, stakes, bench };
  return nextReadings(skip ? { ...choice, skip } : choice);
}

const reading = (point: string, value: number | null): ReadingEvidence => ({ id: point, kind: 'reading', point, value });

describe('the next reading', () => {
  it('tells what each range of readings would mean', () => {
    const mid = next([]).ranked.find(({ point }) => point.id === 'mid')!;
    const high = mid.outcomes.find(({ from, to }) => from < 5 && to > 5)!;
    expect(high.faults[0]!.fault).toBe('r2-open');
    expect(mid.bits).toBeGreaterThan(0.3);
  });

  it('says to act once the fault is known, and to measure while it is not', () => {
    expect(next([]).act).toBe(false);
    expect(next([reading('in', 5), reading('mid', 5), reading('r2', null)]).act).toBe(true);
  });

  it('says to act when an hour costs so much that no reading pays', () => {
    expect(next([], { hourMinor: 1e7 }).act).toBe(true);
  });

  it('counts the minutes to change power and mode', () => {
    const fed = next([]).ranked.find(({ point }) => point.id === 'mid')!;
    const off = next([], { bench: { side: 'back', power: 'off', mode: 'ohms' } }).ranked.find(({ point }) => point.id === 'mid')!;
    expect(off.minutes - fed.minutes).toBeCloseTo(0.5 + 0.75 + 0.1, 9);
  });

  it('leaves out what is to be skipped', () => {
    expect(next([], { skip: new Set(['mid']) }).ranked.map(({ point }) => point.id)).not.toContain('mid');
  });
});

describe('faults that nothing tells apart', () => {
  it('are one group, and those that read like a healthy board are said to', () => {
    const untried = { ...BASELINE, functions: new Map<string, Float32Array>() };
    expect(faultGroups(untried).find(({ faults }) => faults.includes('r3-open'))!.likeHealthy).toBe(true);
    expect(faultGroups(BASELINE).every(({ likeHealthy, faults }) => !likeHealthy && faults.length === 1)).toBe(true);
  });
});
