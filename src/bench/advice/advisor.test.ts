import { describe, expect, it } from 'vitest';
import { createAdvisor } from './advisor.ts';
import { benchOf, bought, did, moved, saw, tried } from './testing/bench-of.ts';
import { pocketModel, pocketModels } from './testing/pocket-model.ts';
import { one, fileOf, fileWithoutChecks, chanceOf, allWork, deadProcessor, type Steps, goodUnit } from './testing/files.ts';

describe('belief in the file of a unit', () => {
  it('points at the battery when it works with a known-good one only', () => {
    const parts = fileOf('u1', one(tried('u1', 'power', 'fails'), tried('u1', 'power', 'works', ['good-battery'])));
    const blocks = [...parts.belief.blocks].sort((a, b) => b.chance - a.chance);
    expect(blocks[0]!.id).toBe('battery');
    expect(blocks[0]!.chance).toBeGreaterThan(0.7);
    expect(blocks[0]!.before).toBeLessThan(blocks[0]!.chance);
  });

  it('shows each reading beside the good boards', () => {
    const [reading] = fileOf('u1', one(['reading-taken', { item_id: 'u1', point: 'vsys', mode: 'volts', value: 1.2 }])).readings;
    expect(reading!.reference).toMatch(/^3\.29 V ± .* on 4 good boards$/);
    expect(reading!.sigmas).toBeLessThan(-20);
  });

  it('names evidence that the rest contradicts', () => {
    const steps = one(...Array.from({ length: 4 }, () => tried('u1', 'power', 'works')), tried('u1', 'power', 'fails'));
    const { odd } = fileOf('u1', steps).belief;
    expect(odd.map(({ text }) => text).join()).toContain('The trial "Power fails"');
  });

  it('stays where one look left it when the same look is recorded again and again, and asks something else', () => {
    const look = saw('u1', 'speaker', 'nothing-wrong');
    const steps = one(tried('u1', 'sound', 'fails'), look);
    const [once, often] = [fileOf('u1', steps), fileOf('u1', [...steps, ...Array.from({ length: 12 }, () => look)])];
    expect(often.belief.hypotheses).toEqual(once.belief.hypotheses);
    expect(often.advice).toEqual(once.advice);
  });

  it('knows nothing of a unit whose model is not here, and says so', () => {
    const state = benchOf(bought('lot', 'marsh-lane', ['u1']));
    const parts = createAdvisor(new Map()).fileParts(state, 'u1');
    expect(parts.belief.unknown).toBe(1);
    expect(parts.advice).toMatchObject({ do: 'nothing', headline: 'Its model "pocket-1" is not here' });
  });
});

describe('the one next thing', () => {
  it('is to receive what has not come', () => {
    const state = benchOf(bought('lot', 'marsh-lane', ['u1']).slice(0, 2));
    expect(createAdvisor(pocketModels()).fileParts(state, 'u1').advice.do).toBe('receive');
  });

  it('is a cheap check on a fresh unit, with what each outcome would mean', () => {
    const { advice } = fileOf('u1', one());
    expect(advice.do).toBe('check');
    expect(advice.id).toBe(`check.${advice.check!.id}`);
    expect(advice.check!.outcomes.length).toBeGreaterThan(1);
    expect(advice.why.join(' ')).toMatch(/It tells most about: .* saves .*; its .* cost /);
  });

  it('carries the cautions of the check and remedy', () => {
    const { advice } = fileOf('u1', one());
    const shown = [advice.check!, ...advice.other_checks].find(({ id }) => id === 'try-power-good-battery');
    expect(shown?.cautions).toEqual(['lithium-cell']);
  });

  it('is to act once acting is worth more than any check', () => {
    const { advice, decision } = fileOf(
      'u1',
      one(
        tried('u1', 'power', 'fails'),
        tried('u1', 'power', 'fails'),
        tried('u1', 'power', 'works', ['good-battery']),
        tried('u1', 'picture', 'works', ['good-battery']),
        tried('u1', 'sound', 'works', ['good-battery']),
      ),
    );
    expect(decision.road).toBe('repair');
    expect(advice).toMatchObject({ do: 'remedy', id: 'remedy.new-battery' });
    expect(advice.remedy!.parts).toEqual([{ part: 'cell-900', name: 'Cell 900 mAh', count: 1, in_drawer: 0 }]);
    expect(advice.why.join(' ')).toContain('To buy: 1 × Cell 900 mAh');
  });

  it('costs a part from the drawer at what it cost', () => {
    const trouble = [tried('u1', 'power', 'fails'), tried('u1', 'power', 'works', ['good-battery'])];
    const bag = ['part-bought', { bag_id: 'bag', part: 'cell-900', name: 'cells', count: 4, price_minor: 400, currency: 'GBP' }] as const;
    const remedyIn = (steps: Steps) => {
      const { advice } = fileOf('u1', steps);
      return [advice.remedy, ...advice.other_remedies].find((remedy) => remedy?.id === 'new-battery')!;
    };
    const without = remedyIn(one(...trouble));
    const withBag = remedyIn(one(...trouble, [...bag]));
    expect(withBag.parts[0]!.in_drawer).toBe(4);
    expect(without.cost_minor - withBag.cost_minor).toBe(350);
  });

  it('goes on to proof after a mended remedy and passing trials, and on to grade, list and sell', () => {
    const mended = one(tried('u1', 'power', 'fails'), did('u1', 'new-battery', 'mended'), ...allWork);
    const { advice, proof } = fileOf('u1', mended);
    expect(advice).toMatchObject({ do: 'prove', id: 'prove.works.power' });
    const passed = proof.steps.map(({ id }): Steps[number] => ['proof-step-done', { item_id: 'u1', step: id, outcome: 'pass' }]);
    expect(fileOf('u1', [...mended, ...passed.slice(0, 3)]).advice.id).toBe('prove.charges-safely');
    const proved = [...mended, ...passed];
    expect(fileOf('u1', proved).advice.do).toBe('grade');
    const graded: Steps = [...proved, ['graded', { item_id: 'u1', scale: 'salvor-1', grade: 'B' }]];
    expect(fileOf('u1', graded).advice.do).toBe('list');
    const offered: Steps = [...graded, ['listed', { item_id: 'u1', price_minor: 7000, place: 'the market' }]];
    expect(fileOf('u1', offered).advice).toMatchObject({ do: 'sell', why: ['Offered for 70.00 GBP at the market.'] });
    const sold: Steps = [...offered, ['sold', { item_id: 'u1', as: 'working', price_minor: 7000, currency: 'GBP' }]];
    expect(fileOf('u1', sold).advice.do).toBe('nothing');
  });

  it('comes back from proof when a step of it fails', () => {
    const steps = one(...allWork, ['proof-step-done', { item_id: 'u1', step: 'works.sound', outcome: 'fail' }]);
    const before = chanceOf(fileOf('u1', one(...allWork)), 'speaker');
    const parts = fileOf('u1', steps);
    expect(chanceOf(parts, 'speaker')).toBeGreaterThan(before);
    expect(parts.proof.ready).toBe(false);
  });

  it('does not come back with what was declined, and remembers why', () => {
    const first = fileOf('u1', one()).advice;
    const declined: Steps[number] = ['advice-declined', { item_id: 'u1', advice: first.id, reason: 'the switch is glued' }];
    const { advice } = fileOf('u1', one(declined));
    expect(advice.id).not.toBe(first.id);
    expect([advice.check, ...advice.other_checks].map((check) => check?.id)).not.toContain(first.check!.id);
    expect(advice.declined).toEqual([{ id: first.id, reason: 'the switch is glued' }]);
  });

  it('is nothing, with the reason, when the person has put aside all that is left', () => {
    const { steps } = fileOf('u1', one()).proof;
    const declined = steps.map(({ id }): Steps[number] => ['advice-declined', { item_id: 'u1', advice: `prove.${id}` }]);
    const { advice } = fileOf('u1', one(...allWork, ...declined));
    expect(advice).toMatchObject({ do: 'nothing', headline: 'Nothing else is worth doing' });
    expect(advice.why[0]).toContain('You put this aside: prove it: power.');
  });

  it('does not come back with a declined remedy or road', () => {
    const steps = one(...deadProcessor('u1'));
    const first = fileWithoutChecks('u1', steps).advice;
    expect(first.do).toBe('part-out');
    const { advice, decision } = fileWithoutChecks('u1', [
      ...steps,
      ['advice-declined', { item_id: 'u1', advice: first.id, reason: 'sentiment' }],
    ]);
    expect(advice.do).not.toBe('part-out');
    expect(decision.options.find(({ road }) => road === 'part-out')).toMatchObject({ possible: false });
  });
});

describe('a step of proof that fails', () => {
  const model = pocketModel().file;
  const step = (id: string, outcome: 'pass' | 'fail'): Steps[number] => ['proof-step-done', { item_id: 'u1', step: id, outcome }];
  const declinedAll = model.remedies.map(({ id }): Steps[number] => ['advice-declined', { item_id: 'u1', advice: `remedy.${id}` }]);
  const triedAll = model.remedies.filter(({ kind }) => kind !== 'transplant').map(({ id }): Steps[number] => did('u1', id, 'not-mended'));
  const passed = fileOf('u1', one()).proof.steps.map(({ id }) => step(id, 'pass'));
  const failing = (id: string, before: Steps = []) => one(...before, ...allWork, ...allWork, ...passed, step(id, 'fail'), step(id, 'fail'));

  it.each([
    ['works.sound', 'sound', [did('u1', 'new-speaker', 'mended'), ...declinedAll]],
    ['works.power', 'power', [did('u1', 'new-battery', 'mended'), ...declinedAll]],
    ['no-hot-spots', 'no hot spot', declinedAll],
    ['no-hot-spots', 'no hot spot', triedAll],
    ['battery-door', 'the battery door', [...triedAll, ...declinedAll]],
  ])('sends a unit down the next best road when no remedy is left, and says why: %s', (id, name, before) => {
    const { advice, decision } = fileWithoutChecks('u1', failing(id, before));
    expect(decision.options.find(({ road }) => road === 'repair')!.possible).toBe(false);
    expect(advice.do).toBe(decision.road);
    expect(['part-out', 'leave']).toContain(advice.do);
    expect(advice.why[0]).toMatch(`It failed its proof (${name}`);
    expect(advice.why[1]).toMatch(/Neither a remedy nor .* is worth its minutes|every remedy was tried or declined/);
    const aside = fileWithoutChecks('u1', [...failing(id, before), ['advice-declined', { item_id: 'u1', advice: advice.id }]]).advice;
    expect(aside.do).not.toBe('prove');
  });

  it('sends it on to another board where one is at hand', () => {
    const spare: Steps = [...bought('lot-2', 'marsh-lane', ['u2']), ...goodUnit('u2'), moved('b2', 'board', 'u2', null)];
    const { advice } = fileWithoutChecks('u1', [
      ...spare,
      ...failing('works.power', [did('u1', 'clean-switch', 'mended'), ...declinedAll]),
    ]);
    expect(advice.headline).toBe('Give it the board that came out of #1');
  });

  it('is evidence of a fault that trials before it do not outweigh', () => {
    const before = fileOf('u1', one(did('u1', 'new-speaker', 'mended'), ...allWork, ...allWork, ...passed));
    const after = fileOf('u1', failing('works.sound', [did('u1', 'new-speaker', 'mended')]));
    expect(before.belief.none).toBeGreaterThan(0.9);
    expect(after.belief.none).toBeLessThan(0.05);
    expect(chanceOf(after, 'speaker')).toBeGreaterThan(chanceOf(before, 'speaker'));
    expect(after.advice.do).not.toBe('prove');
  });

  it('and is no function is to be mended and proved again while remedies are left, unless the person puts it aside', () => {
    const { advice } = fileOf('u1', failing('battery-door'));
    expect(advice).toMatchObject({ do: 'prove', id: 'prove.battery-door' });
    expect(advice.why.join(' ')).toContain('If it cannot be mended, put this aside.');
    const aside = fileWithoutChecks('u1', [...failing('battery-door'), ['advice-declined', { item_id: 'u1', advice: advice.id }]]).advice;
    expect(['part-out', 'leave']).toContain(aside.do);
  });
});
