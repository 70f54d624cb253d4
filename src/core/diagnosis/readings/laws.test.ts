import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Remedy } from '../model.ts';
import { assertReadingBelief } from './assert-reading-belief.ts';
import { believeReadings } from './believe-readings.ts';
import { bestOrder, type FaultSetChance } from './best-order.ts';
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

  it('hold for the order of remedies: no other order or early end brings more, and its ends are a distribution with its mean', () => {
    fc.assert(
      fc.property(anyRepair, ({ sets, remedies }) => {
        const { expectedMinor, outcomes, steps } = bestOrder(sets, remedies, LADDER_STAKES);
        expect(outcomes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
        expect(outcomes.reduce((sum, { chance, valueMinor }) => sum + chance * valueMinor, 0)).toBeCloseTo(expectedMinor, 6);
        expect(Math.max(...[...orders(remedies)].map((order) => worthOf(sets, order)))).toBeCloseTo(expectedMinor, 6);
        expect(
          worthOf(
            sets,
            steps.map(({ remedy }) => remedy),
          ),
        ).toBeCloseTo(expectedMinor, 6);
      }),
      { numRuns: 100 },
    );
  });
});

const anyRemedy = (id: string): fc.Arbitrary<Remedy> =>
  fc.record({
    id: fc.constant(id),
    minutes: fc.integer({ min: 1, max: 60 }),
    partsCostMinor: fc.integer({ min: 0, max: 500 }),
    risk: fc.double({ min: 0, max: 0.2, noNaN: true }),
    stage: fc.constantFrom('open' as const, 'board-out' as const),
    mends: anyMends,
  });

const anyRepair = fc.record({
  sets: fc
    .array(fc.record({ faults: fc.subarray(ids, { maxLength: 2 }), weight: fc.integer({ min: 1, max: 100 }) }), {
      minLength: 1,
      maxLength: 5,
    })
    .map((list): FaultSetChance[] => {
      const total = list.reduce((sum, { weight }) => sum + weight, 5);
      return list.map(({ faults, weight }) => ({ faults, chance: weight / total }));
    }),
  remedies: fc.tuple(anyRemedy('a'), anyRemedy('b'), anyRemedy('c')),
});

/** All orders of all choices of the remedies. */
function* orders(remedies: readonly Remedy[]): Generator<Remedy[]> {
  yield [];
  for (const [i, remedy] of remedies.entries()) for (const rest of orders(remedies.toSpliced(i, 1))) yield [remedy, ...rest];
}

/** Written apart from the product: each set of faults walks along the order, the faults that are left with their chances. */
function worthOf(sets: readonly FaultSetChance[], order: readonly Remedy[]): number {
  const unknown = { faults: ['?'], chance: 1 - sets.reduce((sum, { chance }) => sum + chance, 0) };
  return [...sets, unknown].reduce((sum, { faults, chance }) => sum + chance * walk(faults, order, 'open'), 0);
}

function walk(faults: readonly string[], order: readonly Remedy[], stage: 'open' | 'board-out'): number {
  if (faults.length === 0) return LADDER_STAKES.workingMinor;
  const [remedy, ...rest] = order;
  if (!remedy) return LADDER_STAKES.asIsMinor;
  const out = remedy.stage === 'board-out' && stage === 'open';
  const minutes = remedy.minutes + 2 + (out ? LADDER_STAKES.openingMinutes['board-out'] : 0);
  const cost = (minutes * LADDER_STAKES.hourMinor) / 60 + remedy.partsCostMinor;
  const ways = faults.reduce<{ left: string[]; chance: number }[]>(
    (list, fault) =>
      list.flatMap(({ left, chance }) => [
        { left, chance: chance * (remedy.mends[fault] ?? 0) },
        { left: [...left, fault], chance: chance * (1 - (remedy.mends[fault] ?? 0)) },
      ]),
    [{ left: [], chance: 1 }],
  );
  const after = ways.reduce((sum, { left, chance }) => sum + chance * walk(left, rest, out ? 'board-out' : stage), 0);
  return (1 - remedy.risk) * after + (remedy.risk * LADDER_STAKES.asIsMinor) / 2 - cost;
}
