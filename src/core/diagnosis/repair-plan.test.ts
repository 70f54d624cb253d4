import { describe, expect, it } from 'vitest';
import {
  believe,
  expectedCost,
  orderByChancePerCost,
  rankRemedies,
  repairPlan,
  type DeviceModel,
  type Evidence,
  type RepairPlan,
} from './index.ts';
import { SMALL_PLAYER, STAKES, trial } from './testing/small-player.ts';

const DEAD = trial('dead', 'power', 'fails');
const believed = (...evidence: Evidence[]) => believe(SMALL_PLAYER, evidence);
const sure = (...faults: string[]): Evidence => ({
  id: 'sure',
  kind: 'transplant',
  blocks: [...new Set(SMALL_PLAYER.faults.map(({ block }) => block))],
  incoming: Object.fromEntries(faults.map((fault) => [fault, 1])),
});

describe('remedies by chance per cost', () => {
  it('put the cheap likely one first, with its opening and trial paid', () => {
    const [first] = rankRemedies(SMALL_PLAYER, believed(sure('cell-flat')), STAKES);
    expect(first!.remedy.id).toBe('new-cell');
    expect(first!.minutes).toBe(4 + 5 + 2);
    expect(first!.costMinor).toBe((11 * 1200) / 60 + 500);
    expect(first!.chance).toBeCloseTo(0.95, 2);
  });

  it('count the risk that the work ruins the unit', () => {
    const converter = rankRemedies(SMALL_PLAYER, believed(sure('converter-dead')), STAKES).find(
      ({ remedy }) => remedy.id === 'new-converter',
    )!;
    expect(converter.chance).toBeCloseTo(0.95 * 0.8, 2);
  });

  it('leave out what can mend nothing, and are of no use to a unit with an empty slot', () => {
    const ids = rankRemedies(SMALL_PLAYER, believed(sure('speaker-open')), STAKES).map(({ remedy }) => remedy.id);
    expect(ids).toEqual(['new-speaker']);
    const empty = believed(DEAD, { id: 'out', kind: 'transplant', blocks: ['cell'], incoming: null });
    expect(rankRemedies(SMALL_PLAYER, empty, STAKES).every(({ chance }) => chance === 0)).toBe(true);
    expect(repairPlan(SMALL_PLAYER, empty, STAKES)).toMatchObject({ steps: [], chance: 0, expectedMinor: 1000 });
  });
});

describe('a repair plan', () => {
  it('of one sure fault is its remedy, reckoned by hand', () => {
    const model = { ...SMALL_PLAYER, remedies: SMALL_PLAYER.remedies.slice(2, 3) };
    const plan = repairPlan(model, believed(sure('converter-dead')), STAKES);
    const cost = (40 + 15 + 2) * 20 + 300;
    expect(plan.steps).toHaveLength(1);
    expect(plan.chance).toBeCloseTo(0.95 * 0.8, 2);
    expect(plan.expectedMinor).toBeCloseTo(0.95 * (0.8 * 6000 + 0.2 * 1000) + 0.05 * 500 - cost, -1);
    expect(plan.spendMinor).toBeCloseTo(300, 0);
  });

  it('mends two sure faults one after the other, though the first step cannot end it', () => {
    const plan = repairPlan(SMALL_PLAYER, believed(sure('cell-flat', 'speaker-open')), STAKES);
    expect(plan.steps.map(({ remedy }) => remedy.id)).toEqual(['new-speaker', 'new-cell']);
    expect(plan.steps[0]!.chance).toBeLessThan(0.01);
    expect(plan.chance).toBeCloseTo(0.95 * 0.9, 2);
    expect(plan.steps[1]!.minutes).toBe(4 + 2);
  });

  it('learns from each failure: after the new cell, the chance of the switch has grown', () => {
    const belief = believed(DEAD);
    const plan = repairPlan(SMALL_PLAYER, belief, STAKES);
    const second = plan.steps.findIndex(({ remedy }) => remedy.id === 'clean-switch');
    expect(second).toBeGreaterThan(0);
    expect(plan.steps[second]!.chance).toBeGreaterThan(
      0.98 * 0.8 * belief.sets.find(({ faults }) => faults.join() === 'switch-dirty')!.chance,
    );
  });

  it('stops where going on is worth less than giving up', () => {
    const poor = repairPlan(SMALL_PLAYER, believed(DEAD), { ...STAKES, workingMinor: 1800 });
    const rich = repairPlan(SMALL_PLAYER, believed(DEAD), { ...STAKES, workingMinor: 30_000 });
    expect(poor.steps.length).toBeLessThan(rich.steps.length);
    expect(poor.expectedMinor).toBeGreaterThanOrEqual(1000);
    expect(repairPlan(SMALL_PLAYER, believed(DEAD), { ...STAKES, workingMinor: 900 }).steps).toEqual([]);
  });

  it('sells a unit that is well as it is', () => {
    const plan = repairPlan(SMALL_PLAYER, believed(sure()), STAKES);
    expect(plan).toMatchObject({ steps: [], chance: 1, expectedMinor: 6000, minutes: 0 });
  });

  it('with single faults goes by the classic rule', () => {
    const [chances, costs] = [
      [0.4, 0.3, 0.2, 0.1],
      [8, 2, 5, 1],
    ];
    const plan = tablePlan(
      chances,
      costs.map((cost, i) => ({ cost, mends: [i] })),
    );
    const order = orderByChancePerCost(chances.map((chance, i) => ({ id: `${i}`, chance, cost: costs[i]! })));
    expect(plan.steps.map(({ remedy }) => remedy.id)).toEqual(order.map(({ id }) => id));
    expect(plan.spendMinor / 100).toBeCloseTo(expectedCost(order), 1);
  });

  it('is the best order also where chance per cost misleads: the two that overlap least cost 7.9, beginning with the best ratio 9.3', () => {
    const plan = tablePlan(
      [0.5, 0.3, 0.2],
      [
        { cost: 7, mends: [0, 2] },
        { cost: 7.9, mends: [0, 1] },
        { cost: 3, mends: [1] },
      ],
    );
    expect(plan.steps.map(({ remedy }) => remedy.id)).toEqual(['0', '2']);
    expect(plan.spendMinor / 100).toBeCloseTo(7.9, 1);
  });
});

/** The plan for a dead unit with exactly one fault of these chances; each remedy is sure to mend its faults, for money alone. */
function tablePlan(chances: readonly number[], remedies: readonly { cost: number; mends: readonly number[] }[]): RepairPlan {
  const functions = ['a', 'b', 'c', 'd', 'e'].map((id) => ({ id, needs: chances.map((_, i) => [`${i}`]) }));
  const model: DeviceModel = {
    ...SMALL_PLAYER,
    unknownRate: 0,
    faults: chances.map((chance, i) => ({
      id: `${i}`,
      block: `${i}`,
      rate: (1e-3 * chance) / (1 + 1e-3 * chance),
      behaves: { works: 0, fails: 1, 'comes-and-goes': 0 },
      seen: {},
      shifts: {},
    })),
    functions,
    remedies: remedies.map(({ cost, mends }, i) => ({
      id: `${i}`,
      mends: Object.fromEntries(mends.map((fault) => [`${fault}`, 1])),
      minutes: 0,
      partsCostMinor: 100 * cost,
      risk: 0,
      stage: 'closed' as const,
    })),
  };
  const belief = believe(
    model,
    functions.map(({ id }) => trial(id, id, 'fails')),
  );
  return repairPlan(model, belief, { ...STAKES, workingMinor: 1e6, hourMinor: 0 });
}
