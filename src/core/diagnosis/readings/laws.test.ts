import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assertReadingBelief } from './assert-reading-belief.ts';
import { believeReadings } from './believe-readings.ts';
import type { ReadingEvidence } from './evidence.ts';
import { nextReadings } from './next-readings.ts';
import { outcomeBands } from './outcome-bands.ts';
import { ladder, LADDER_FAULTS, LADDER_POINTS, LADDER_REMEDIES, LADDER_STAKES } from './testing/ladder.ts';

const BASELINE = ladder();
const ids = LADDER_FAULTS.map(({ id }) => id);

const anyPiece: fc.Arbitrary<ReadingEvidence> = fc.oneof(
  fc.record({
    id: fc.uuid(),
    kind: fc.constant('reading' as const),
    point: fc.constantFrom(...LADDER_POINTS.map(({ id }) => id)),
    value: fc.option(fc.double({ min: -20, max: 1e7, noNaN: true })),
  }),
  fc.record({
    id: fc.uuid(),
    kind: fc.constant('function' as const),
    function: fc.constant('lamp'),
    outcome: fc.constantFrom('works', 'fails', 'comes-and-goes'),
    honesty: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
);
const anyEvidence = fc.array(anyPiece, { maxLength: 8 });
const anyMends = fc.dictionary(fc.constantFrom(...ids), fc.double({ min: 0, max: 1, noNaN: true }));

describe('the laws of readings', () => {
  it('hold for the belief after any history, with any remedy in between and any part simulated', () => {
    fc.assert(
      fc.property(anyEvidence, anyMends, anyEvidence, fc.subarray(ids), (before, mends, after, known) => {
        const baseline = ladder(known);
        assertReadingBelief(
          believeReadings(
            [
              { baseline, evidence: before, mends },
              { baseline, evidence: after },
            ],
            { unknownRate: 0.02 },
          ),
        );
      }),
      { numRuns: 150 },
    );
  });

  it('hold for the next readings: nothing is worth less than nothing, outcomes share the whole, a range belongs to one outcome', () => {
    const bands = outcomeBands(BASELINE.kernels);
    fc.assert(
      fc.property(anyEvidence, (evidence) => {
        const belief = believeReadings([{ baseline: BASELINE, evidence }], { unknownRate: 0.02 });
        const bench = { side: 'front', power: 'on', mode: 'volts' } as const;
        const { ranked, act } = nextReadings({
          belief,
          baseline: BASELINE,
          bands,
          remedies: LADDER_REMEDIES,
          stakes: LADDER_STAKES,
          bench,
        });
        expect(ranked).toHaveLength(LADDER_POINTS.length);
        expect(act).toBe(ranked.every(({ pays }) => !pays));
        for (const { savingMinor, bits, outcomes } of ranked) {
          expect(savingMinor).toBeGreaterThanOrEqual(0);
          expect(bits).toBeGreaterThanOrEqual(0);
          expect(Math.abs(outcomes.reduce((sum, { chance }) => sum + chance, 0) - 1)).toBeLessThan(0.05);
          outcomes
            .slice(1)
            .forEach(({ from }, i) => expect(from).toBeGreaterThanOrEqual(outcomes[i]!.to === Infinity ? 0 : outcomes[i]!.to));
        }
      }),
      { numRuns: 60 },
    );
  });
});
