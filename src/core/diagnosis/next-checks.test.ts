import { describe, expect, it } from 'vitest';
import { believe, nextChecks, paysForItself, repairPlan, type DeviceModel, type Evidence, type RankedCheck } from './index.ts';
import { SMALL_PLAYER, STAKES, trial } from './testing/small-player.ts';

const DEAD = trial('dead', 'power', 'fails');
const ranked = (evidence: readonly Evidence[], stakes = STAKES, model = SMALL_PLAYER): RankedCheck[] =>
  nextChecks(model, believe(model, evidence), evidence, stakes);
const of = (checks: readonly RankedCheck[], id: string): RankedCheck => checks.find(({ check }) => check.id === id)!;

describe('the next check', () => {
  it('for a dead unit is to try it with a known-good cell', () => {
    const [first] = ranked([DEAD]);
    expect(first!.check.id).toBe('try-good-cell');
    expect(paysForItself(first!, STAKES)).toBe(true);
    const works = first!.outcomes.find(({ outcome }) => outcome === 'works')!;
    expect(works.sets[0]!.faults).toEqual(['cell-flat']);
    expect(works.marginalShift[0]).toMatchObject({ fault: 'cell-flat' });
    expect(works.marginalShift[0]!.to).toBeGreaterThan(works.marginalShift[0]!.from + 0.2);
  });

  it('counts the minutes to get at the point', () => {
    const checks = ranked([DEAD]);
    expect(of(checks, 'measure-cell').minutes).toBe(1 + 5);
    expect(of(checks, 'measure-coil').minutes).toBe(1 + 5 + 10);
    expect(of(ranked([DEAD], { ...STAKES, stage: 'open' }), 'measure-coil').minutes).toBe(1 + 10);
  });

  it('is worth nothing where no outcome changes what is done', () => {
    const look = of(ranked([DEAD]), 'look-shell');
    expect(look.savingMinor).toBeLessThan(10);
    expect(paysForItself(look, STAKES)).toBe(false);
    expect(ranked([DEAD], { ...STAKES, workingMinor: 1000 }).every(({ savingMinor }) => savingMinor < 1e-6)).toBe(true);
  });

  it('saves what an all-knowing friend would, when it tells all', () => {
    const model: DeviceModel = {
      ...SMALL_PLAYER,
      unknownRate: 0,
      faults: SMALL_PLAYER.faults
        .slice(0, 2)
        .map((fault) => ({ ...fault, rate: 0.02, behaves: { works: 0, fails: 1, 'comes-and-goes': 0 } })),
      functions: SMALL_PLAYER.functions.slice(0, 1),
      points: [],
      remedies: [
        { id: 'a', mends: { 'cell-flat': 1 }, minutes: 28, partsCostMinor: 0, risk: 0, stage: 'closed' },
        { id: 'b', mends: { 'switch-dirty': 1 }, minutes: 28, partsCostMinor: 0, risk: 0, stage: 'closed' },
      ],
      checks: [SMALL_PLAYER.checks[1]!],
    };
    const belief = believe(model, [DEAD]);
    const [check] = nextChecks(model, belief, [], STAKES);
    // Either remedy takes half an hour with its trial, 600. Both faults alike: not knowing, the wrong one comes first half of the time.
    const plan = repairPlan(model, belief, STAKES);
    expect(plan.steps.map(({ costMinor }) => costMinor)).toEqual([600, 600]);
    expect(check!.savingMinor).toBeGreaterThan(0.8 * 300);
    expect(check!.savingMinor).toBeLessThan(300);
  });

  it('credits the way to a check only as far as the check is worth being there', () => {
    const model = { ...SMALL_PLAYER, remedies: SMALL_PLAYER.remedies.slice(0, 1) };
    const evidence = [DEAD, trial('aided', 'power', 'works', ['good-cell'])];
    const look = of(ranked(evidence, STAKES, model), 'look-switch');
    expect(look.savingMinor).toBeLessThan(20);
    expect(paysForItself(look, STAKES)).toBe(false);
  });

  it('says of a repeat that it is one, and ranks it low', () => {
    const again = of(ranked([DEAD]), 'try-power');
    const fresh = of(ranked([DEAD, { id: 'r', kind: 'remedy', remedy: 'clean-switch', outcome: 'not-tried-yet' }]), 'try-power');
    expect([again.repeat, fresh.repeat]).toEqual([true, false]);
    expect(again.bits).toBeLessThan(fresh.bits / 4);
    expect(fresh.bits).toBeGreaterThan(0.1);
  });

  it('expects of a repeated trial just what belief will take from it, however often it was done', () => {
    const sometimes: Evidence[] = [DEAD, trial('lives', 'power', 'works'), { ...DEAD, id: 'dead-2' }];
    for (const evidence of [[DEAD], [DEAD, { ...DEAD, id: 'again' }], sometimes]) {
      const again = of(ranked(evidence), 'try-power');
      expect(again.outcomes).toHaveLength(3);
      expect(again.outcomes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
      for (const { outcome, marginalShift } of again.outcomes) {
        const then = believe(SMALL_PLAYER, [...evidence, trial('then', 'power', outcome as 'works')]);
        for (const { fault, to } of marginalShift) expect(to).toBeCloseTo(then.marginal.get(fault)!, 12);
      }
    }
  });

  it.each<[string, Evidence, string]>([
    ['look-switch', { id: 'f', kind: 'finding', block: 'switch', sees: 'dirty' }, 'dirty'],
    ['look-switch', { id: 'f', kind: 'finding', block: 'switch', sees: 'nothing-wrong' }, 'nothing-wrong'],
    ['measure-cell', { id: 'r', kind: 'reading', point: 'cell-v', value: 2.1 }, 'low'],
    ['measure-gap', { id: 'r', kind: 'reading', point: 'gap', value: null }, 'normal'],
  ])('expects nothing new of %s once it showed %o', (id, seen, outcome) => {
    const again = of(ranked([DEAD, seen]), id);
    expect(again).toMatchObject({ repeat: true, outcomes: [{ outcome, chance: 1 }] });
    expect(again.bits).toBeCloseTo(0, 9);
    expect(again.savingMinor).toBeCloseTo(0, 6);
    const twice = believe(SMALL_PLAYER, [DEAD, seen, { ...seen, id: 'again' }]);
    expect(twice.weights).toEqual(believe(SMALL_PLAYER, [DEAD, seen]).weights);
  });

  it('leaves out what was declined and gives no more than asked for', () => {
    const belief = believe(SMALL_PLAYER, [DEAD]);
    const some = nextChecks(SMALL_PLAYER, belief, [DEAD], STAKES, { skip: new Set(['try-good-cell']), limit: 3 });
    expect(some).toHaveLength(3);
    expect(some.map(({ check }) => check.id)).not.toContain('try-good-cell');
  });
});
