import { describe, expect, it } from 'vitest';
import { createAdvisor } from './advisor.ts';
import { benchOf, bought, moved, tried } from './testing/bench-of.ts';
import { pocketModels } from './testing/pocket-model.ts';
import { one, fileOf, deadProcessor, type Steps, goodUnit } from './testing/files.ts';

describe('the drawer', () => {
  it('wants the parts of units that the plan of the pile opens, and without a plan those of units that are best mended by themselves', () => {
    const advisor = createAdvisor(pocketModels());
    const state = benchOf(one(tried('u1', 'power', 'fails'), tried('u1', 'power', 'works', ['good-battery'])));
    const alone = advisor.partWants(state, null);
    expect(alone.length).toBeGreaterThan(0);
    expect(advisor.partWants(state, new Set(['u1']))).toEqual(alone);
    expect(advisor.partWants(state, new Set())).toEqual([]);
  });

  const worksChance = (id: string, steps: Steps): number => createAdvisor(pocketModels()).worksChance(benchOf(steps), id);

  it('trusts a board by what was seen of it in its old home', () => {
    const two = bought('lot', 'marsh-lane', ['u1', 'u2']);
    const good = worksChance('b', [...two, ...goodUnit('u1'), moved('b', 'board', 'u1', null)]);
    const bad = worksChance('b', [...two, ...deadProcessor('u1'), moved('b', 'board', 'u1', null)]);
    const untried = worksChance('b', [...two, moved('b', 'board', 'u1', null)]);
    expect(good).toBeGreaterThan(0.9);
    expect(bad).toBeLessThan(0.3);
    expect(untried).toBeLessThan(good);
    expect(untried).toBeGreaterThan(bad);
  });

  it('does not hold against a board what its old home showed after it had left', () => {
    const two = bought('lot', 'marsh-lane', ['u1', 'u2']);
    const out = moved('b', 'board', 'u1', null);
    expect(worksChance('b', [...two, out, ...deadProcessor('u1')])).toBe(worksChance('b', [...two, out]));
  });

  it('keeps an assembly, worth its value times the chance that it is well, and judges its own blocks only', () => {
    const steps: Steps = [...bought('lot', 'marsh-lane', ['u1']), ...goodUnit('u1'), moved('b', 'board', 'u1', null)];
    const { advice, decision, belief } = fileOf('b', steps);
    expect(advice.headline).toBe('Keep it for a unit that needs it');
    expect(belief.blocks.map(({ id }) => id)).toEqual(['switch', 'converter', 'processor', 'slot-contacts']);
    expect(decision.options.filter(({ possible }) => possible).map(({ road }) => road)).toEqual(['leave']);
    expect(decision.options[3]!.value_minor).toBe(Math.round(1400 * worksChance('b', steps)));
  });

  it('never calls a unit with an empty slot well', () => {
    const steps: Steps = [...bought('lot', 'marsh-lane', ['u1']), ...goodUnit('u1'), moved('b', 'board', 'u1', null)];
    const { belief, decision } = fileOf('u1', steps);
    expect(belief.none).toBe(0);
    expect(belief.hypotheses[0]!.faults.map(({ name }) => name)).toContain('Board is not there');
    expect(decision.options.find(({ road }) => road === 'repair')!.possible).toBe(false);
    expect(worksChance('u1', steps)).toBe(0);
  });

  it('carries evidence on through several homes', () => {
    const steps: Steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      moved('b1', 'board', 'u1', null),
      moved('b2', 'board', 'u2', null),
      moved('b1', 'board', null, 'u2'),
    ];
    const proven: Steps = [...steps, ...goodUnit('u2'), moved('b1', 'board', 'u2', null)];
    expect(worksChance('b1', proven)).toBeGreaterThan(0.9);
    expect(worksChance('b2', proven)).toBe(worksChance('b2', steps));
    expect(
      fileOf('u1', [...proven, moved('b1', 'board', null, 'u1')]).belief.blocks.find(({ id }) => id === 'converter')!.chance,
    ).toBeLessThan(0.05);
  });
});

describe('the pile', () => {
  it('lists all that is unfinished with its advice, and gives one donor to one unit only', () => {
    const steps: Steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2', 'u3']),
      ...goodUnit('u3'),
      ...deadProcessor('u1'),
      ...deadProcessor('u2'),
      moved('b3', 'board', 'u3', null),
    ];
    const pile = createAdvisor(pocketModels()).pile(benchOf(steps), rowFor);
    expect(pile.plan.map(({ row }) => row.id).sort()).toEqual(['u1', 'u2', 'u3']);
    expect(pile.plan.filter(({ road }) => road === 'transplant').length).toBe(1);
    expect(pile.counts).toEqual({ 'on-the-bench': 3, 'in-the-drawer': 1 });
    expect(pile.value_minor).toBe(pile.plan.reduce((sum, line) => sum + line.value_minor, 0));
  });

  it('agrees with the file of a unit that wants no donor', () => {
    const state = benchOf(one(tried('u1', 'power', 'fails'), tried('u1', 'power', 'works', ['good-battery'])));
    const advisor = createAdvisor(pocketModels());
    const [line] = advisor.pile(state, rowFor).plan;
    expect(line!.headline).toBe(advisor.fileParts(state, 'u1').advice.headline);
  });

  it('says the same whether or not it was asked before', () => {
    const advisor = createAdvisor(pocketModels());
    const steps = one(tried('u1', 'power', 'fails'));
    advisor.fileParts(benchOf(one()), 'u1');
    advisor.pile(benchOf([...steps, tried('u1', 'sound', 'works')]), rowFor);
    const state = benchOf(steps);
    expect(advisor.fileParts(state, 'u1')).toEqual(createAdvisor(pocketModels()).fileParts(state, 'u1'));
  });
});

const rowFor = (item: Parameters<Parameters<ReturnType<typeof createAdvisor>['pile']>[1]>[0]) => ({
  id: item.id,
  number: item.number,
  name: item.name,
  kind: item.kind,
  model_id: item.modelId,
  status: item.status,
  lot_id: item.lotId,
  lot_title: '',
  seller: '',
  place: '',
  slot: item.slot,
  cost_minor: 0,
  grade: '',
  changed_at: item.changedAt,
  changed_seq: item.changedSeq,
});
