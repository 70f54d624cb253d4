import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bestOrder, type FaultSetChance } from './best-order.ts';
import type { Remedy } from './model.ts';
import { DiagnosisError } from './posterior-over-sets.ts';
import { LADDER_FAULTS, LADDER_STAKES } from './readings/testing/ladder.ts';

const ids = LADDER_FAULTS.map(({ id }) => id);
const anyMends = fc.dictionary(fc.constantFrom(...ids), fc.double({ min: 0, max: 1, noNaN: true }));

describe('the order of remedies', () => {
  it('is such that no other order or early end brings more', () => {
    fc.assert(
      fc.property(anyRepair, ({ sets, remedies }) => {
        const { expectedMinor, steps } = bestOrder(sets, remedies, LADDER_STAKES);
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

  it('is refused for more remedies than can be put in order exactly', () => {
    const remedy: Remedy = { id: 'a', minutes: 1, partsCostMinor: 0, risk: 0, stage: 'open', mends: {} };
    expect(() =>
      bestOrder(
        [],
        Array.from({ length: 9 }, () => remedy),
        LADDER_STAKES,
      ),
    ).toThrow(DiagnosisError);
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
