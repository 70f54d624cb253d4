import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assertBelief, believe, nextChecks, rankRemedies, repairPlan } from './index.ts';
import type { Behaviour, DeviceModel, Evidence, Stakes } from './model.ts';
import { SMALL_PLAYER, STAKES } from './testing/small-player.ts';

const BEHAVIOURS: readonly Behaviour[] = ['works', 'fails', 'comes-and-goes'];
const SIGHTS = ['nothing-wrong', 'dirty', 'cracked', 'burnt', 'corrosion'];
type Piece = Evidence extends infer E ? (E extends Evidence ? Omit<E, 'id'> : never) : never;

/** Any history of a unit of this model, in the words of the model. */
function anyEvidence(model: DeviceModel, maxLength = 12): fc.Arbitrary<Evidence[]> {
  const blocks = [...new Set(model.faults.map(({ block }) => block))];
  const from = <T>(values: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...values);
  const functionId = from(model.functions.map(({ id }) => id));
  const chance = fc.double({ min: 0, max: 1, noNaN: true });
  const incoming = fc.dictionary(from(model.faults.map(({ id }) => id)), chance);
  const piece: fc.Arbitrary<Piece> = fc.oneof(
    fc.record({
      kind: fc.constant('trial' as const),
      function: functionId,
      outcome: from(BEHAVIOURS),
      with: fc.subarray(model.accessories.map(({ id }) => id)),
    }),
    fc.record({ kind: fc.constant('claim' as const), function: functionId, says: from(BEHAVIOURS), honesty: chance }),
    fc.record({ kind: fc.constant('claim-place' as const), block: from(blocks), sees: from(SIGHTS), honesty: chance }),
    fc.record({ kind: fc.constant('finding' as const), block: from(blocks), sees: from(SIGHTS) }),
    fc.record({
      kind: fc.constant('reading' as const),
      point: from(model.points.map(({ id }) => id)),
      value: fc.option(fc.double({ min: -50, max: 1e7, noNaN: true })),
    }),
    fc.record({ kind: fc.constant('not-well' as const) }),
    fc.record({
      kind: fc.constant('remedy' as const),
      remedy: from(model.remedies.map(({ id }) => id)),
      outcome: from(['mended', 'not-mended', 'made-worse', 'not-tried-yet'] as const),
    }),
    fc.record({ kind: fc.constant('transplant' as const), blocks: fc.subarray(blocks, { minLength: 1 }), incoming: fc.option(incoming) }),
  );
  return fc.array(piece, { maxLength }).map((pieces) => pieces.map((each, i) => ({ ...each, id: `e${i}` }) as Evidence));
}

const anyStakes: fc.Arbitrary<Stakes> = fc.record({
  workingMinor: fc.integer({ min: 0, max: 20_000 }),
  asIsMinor: fc.integer({ min: 0, max: 5000 }),
  hourMinor: fc.integer({ min: 0, max: 5000 }),
  openingMinutes: fc.record({ open: fc.integer({ min: 0, max: 30 }), 'board-out': fc.integer({ min: 0, max: 30 }) }),
  stage: fc.constantFrom('closed', 'open', 'board-out'),
});

const close = (value: number, wanted: number): void => expect(Math.abs(value - wanted)).toBeLessThan(1e-6 * Math.max(1, Math.abs(wanted)));
const total = (chances: readonly { readonly chance: number }[]): number => chances.reduce((sum, { chance }) => sum + chance, 0);

describe('the laws of diagnosis', () => {
  it('hold for the belief after any history, and with any piece left out', () => {
    fc.assert(
      fc.property(anyEvidence(SMALL_PLAYER), fc.nat(), (evidence, pick) => {
        assertBelief(believe(SMALL_PLAYER, evidence));
        const without = evidence[pick % Math.max(evidence.length, 1)]?.id;
        if (without === undefined) return;
        const belief = believe(SMALL_PLAYER, evidence, { without });
        assertBelief(belief);
        expect(belief.weights).toEqual(
          believe(
            SMALL_PLAYER,
            evidence.filter(({ id }) => id !== without),
          ).weights,
        );
      }),
      { numRuns: 200 },
    );
  });

  it('hold for a repair plan: its ends are a distribution, their mean is what it expects, and giving up is never better', () => {
    fc.assert(
      fc.property(anyEvidence(SMALL_PLAYER, 6), anyStakes, (evidence, stakes) => {
        const plan = repairPlan(SMALL_PLAYER, believe(SMALL_PLAYER, evidence), stakes);
        close(total(plan.outcomes), 1);
        close(
          plan.outcomes.reduce((sum, { valueMinor, chance }) => sum + valueMinor * chance, 0),
          plan.expectedMinor,
        );
        expect(plan.expectedMinor).toBeGreaterThanOrEqual(stakes.asIsMinor - 1e-6);
        expect(plan.giveUpAfter).toBe(plan.steps.length);
        expect(new Set(plan.steps.map(({ remedy }) => remedy.id)).size).toBe(plan.steps.length);
      }),
      { numRuns: 200 },
    );
  });

  it('hold for the next checks: outcomes share the whole, nothing is worth less than nothing, the best comes first', () => {
    fc.assert(
      fc.property(anyEvidence(SMALL_PLAYER, 6), anyStakes, (evidence, stakes) => {
        const belief = believe(SMALL_PLAYER, evidence);
        const ranked = nextChecks(SMALL_PLAYER, belief, evidence, stakes);
        expect(ranked).toHaveLength(SMALL_PLAYER.checks.length);
        for (const each of ranked) {
          expect(Math.abs(total(each.outcomes) - 1)).toBeLessThan(1e-3);
          expect(each.savingMinor).toBeGreaterThanOrEqual(0);
          expect(each.bits).toBeGreaterThanOrEqual(0);
          for (const { fault, from } of each.outcomes.flatMap(({ marginalShift }) => marginalShift))
            expect(from).toBe(belief.marginal.get(fault));
        }
        ranked.slice(1).forEach((each, i) => expect(each.savingPerMinuteMinor).toBeLessThanOrEqual(ranked[i]!.savingPerMinuteMinor + 1e-6));
      }),
      { numRuns: 60 },
    );
  });

  it('hold for outcomes of a check: what is believed now is the mean of what will be believed', () => {
    fc.assert(
      fc.property(anyEvidence(SMALL_PLAYER, 5), fc.constantFrom('power', 'sound', 'picture'), (evidence, name) => {
        const belief = believe(SMALL_PLAYER, [...evidence, { id: 'swap', kind: 'remedy', remedy: 'new-cell', outcome: 'not-tried-yet' }]);
        const after = (['works', 'fails', 'comes-and-goes'] as const).map((outcome) =>
          believe(SMALL_PLAYER, [
            ...evidence,
            { id: 'swap', kind: 'remedy', remedy: 'new-cell', outcome: 'not-tried-yet' },
            { id: 'try', kind: 'trial', function: name, outcome, with: [] },
          ]),
        );
        const check = { id: 'c', kind: 'try', function: name, with: [], minutes: 1, stage: 'closed' } as const;
        const [ranked] = nextChecks({ ...SMALL_PLAYER, checks: [check] }, belief, [], STAKES);
        const chances = ['works', 'fails', 'comes-and-goes'].map(
          (way) => ranked!.outcomes.find(({ outcome }) => outcome === way)?.chance ?? 0,
        );
        for (const [fault, chance] of belief.marginal)
          close(
            after.reduce((sum, then, i) => sum + chances[i]! * then.marginal.get(fault)!, 0),
            chance,
          );
      }),
      { numRuns: 60 },
    );
  });

  it('hold for remedies: chances are chances, and the order is that of the ratio', () => {
    fc.assert(
      fc.property(anyEvidence(SMALL_PLAYER, 6), anyStakes, (evidence, stakes) => {
        const ranked = rankRemedies(SMALL_PLAYER, believe(SMALL_PLAYER, evidence), stakes);
        for (const { chance, costMinor } of ranked) {
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
          expect(costMinor).toBeGreaterThanOrEqual(0);
        }
        expect(ranked.map(({ ratio }) => ratio)).toEqual(ranked.map(({ ratio }) => ratio).sort((a, b) => b - a));
      }),
      { numRuns: 100 },
    );
  });
});
