import { describe, expect, it } from 'vitest';
import { believeReadings } from './believe-readings.ts';
import type { ReadingEvidence } from './evidence.ts';
import { outcomeBands } from './outcome-bands.ts';
import { repeatReading } from './repeat-reading.ts';
import { ladder, LADDER_REMEDIES, LADDER_STAKES } from './testing/ladder.ts';

const BASELINE = ladder();
const BANDS = outcomeBands(BASELINE.kernels);
const OPTIONS = { unknownRate: 0.02, noneRate: 0.02 };

const reading = (point: string, value: number | null): ReadingEvidence => ({ id: `of ${point}`, kind: 'reading', point, value });
const believe = (evidence: readonly ReadingEvidence[]) => believeReadings([{ baseline: BASELINE, evidence }], OPTIONS);

function repeat(evidence: readonly ReadingEvidence[], hourMinor = LADDER_STAKES.hourMinor) {
  return repeatReading([{ baseline: BASELINE, evidence }], OPTIONS, {
    belief: believe(evidence),
    baseline: BASELINE,
    bands: BANDS,
    remedies: LADDER_REMEDIES,
    stakes: { ...LADDER_STAKES, hourMinor },
    bench: { side: 'front', power: 'off', mode: 'ohms' },
  });
}

/** Everything is in order, and R2, which no fault makes 41 Ω with the middle as it is. */
const AT_ODDS = [reading('in', 5), reading('mid', 2.5), reading('r1', 1000), reading('r2', 41)];

describe('the reading that disagrees most', () => {
  it('is offered to be taken again, with its chance to be a slip and what that would tell', () => {
    const { evidenceId, point, slip, bits } = repeat(AT_ODDS)!;
    expect([evidenceId, point.id]).toEqual(['of r2', 'r2']);
    expect(slip).toBeGreaterThan(0.5);
    expect(bits).toBeGreaterThan(0);
  });

  it('is not offered where the readings agree', () => {
    expect(repeat([reading('in', 5), reading('mid', 5), reading('r2', null)])).toBeUndefined();
  });

  it('saves less than its minutes cost when an hour is dear', () => {
    expect(repeat(AT_ODDS, 1e7)!.pays).toBe(false);
  });

  it('is worth more while the rest leaves more open', () => {
    const open = repeat([reading('in', 5), reading('mid', 5), reading('r2', 1000)])!;
    expect(open.evidenceId).toMatch(/of (mid|r2)/);
    expect(open.bits).toBeGreaterThan(repeat(AT_ODDS)!.bits);
  });
});
