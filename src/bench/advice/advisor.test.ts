import { describe, expect, it } from 'vitest';
import { createAdvisor } from './advisor.ts';
import { assertSound } from './testing/assert-sound.ts';
import { benchOf, bought, did, moved, saw, tried } from './testing/bench-of.ts';
import { pocketModel, pocketModels } from './testing/pocket-model.ts';

type Steps = Parameters<typeof benchOf>[0];

const one = (...steps: Steps): Steps => [...bought('lot', 'marsh-lane', ['u1']), ...steps];

/** The file of a unit after such steps, checked by the laws of advice. */
function fileOf(id: string, steps: Steps) {
  const parts = createAdvisor(pocketModels()).fileParts(benchOf(steps), id);
  assertSound(parts);
  return parts;
}

/** The file after every check that is advised has been declined: what is left is to act. */
function fileWithoutChecks(id: string, steps: Steps) {
  const declined: Steps[number][] = [];
  for (;;) {
    const parts = fileOf(id, [...steps, ...declined]);
    if (parts.advice.do !== 'check') return parts;
    declined.push(['advice-declined', { item_id: id, advice: parts.advice.id }]);
  }
}

const chanceOf = (parts: ReturnType<typeof fileOf>, block: string): number => parts.belief.blocks.find(({ id }) => id === block)!.chance;

const allWork: Steps = [tried('u1', 'power', 'works'), tried('u1', 'picture', 'works'), tried('u1', 'sound', 'works')];

/** Nothing comes, even with a good battery, and the converter gives its volts and the contacts are clean: the processor. */
const deadProcessor = (id: string): Steps => [
  ['reading-taken', { item_id: id, point: 'vsys', mode: 'volts', value: 3.29 }],
  tried(id, 'power', 'works'),
  tried(id, 'power', 'works'),
  tried(id, 'picture', 'fails'),
  tried(id, 'sound', 'fails'),
  tried(id, 'picture', 'fails'),
  did(id, 'clean-contacts', 'not-mended'),
  tried(id, 'picture', 'fails'),
  did(id, 'clean-contacts', 'not-mended'),
  tried(id, 'sound', 'fails'),
];

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
    expect(advice.why[0]).toContain('You put this aside: prove it: power works');
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
    ['works.sound', 'sound works', [did('u1', 'new-speaker', 'mended'), ...declinedAll]],
    ['works.power', 'power works', [did('u1', 'new-battery', 'mended'), ...declinedAll]],
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

describe('the decision', () => {
  it('parts out a hopeless unit with good parts, and leaves one whose parts are worth nothing', () => {
    expect(fileOf('u1', one(...deadProcessor('u1'))).decision.road).toBe('part-out');
    const bare = one(
      ...deadProcessor('u1'),
      saw('u1', 'display', 'cracked'),
      moved('d1', 'display', 'u1', null),
      moved('b1', 'battery', 'u1', null),
      moved('s1', 'speaker', 'u1', null),
    );
    expect(fileOf('u1', bare).decision.road).toBe('leave');
  });

  it('values what is left of a unit: the price for parts in proportion to the assemblies that it still holds', () => {
    const roadOf = (steps: Steps, road: string) => fileOf('u1', one(...steps)).decision.options.find((option) => option.road === road)!;
    const gone = moved('b1', 'board', 'u1', null);
    const parts = [roadOf([], 'leave'), roadOf([gone], 'leave'), roadOf([saw('u1', 'board', 'missing')], 'leave')];
    const net = (price: number): number => Math.max(0, Math.round(price * 0.88 - 400));
    // Battery, board, display and speaker are worth 600, 1400, 1300 and 300; the price for parts is 1500.
    expect(parts.map(({ value_minor }) => value_minor)).toEqual([net(1500), net((1500 * 2200) / 3600), net((1500 * 2200) / 3600)]);
    expect(parts[1]!.why.join()).toContain('without its board it holds 61 % of that, 9.17 GBP');
    expect(roadOf([gone], 'part-out').why.join()).not.toContain('Board:');
    const back = roadOf([gone, moved('b1', 'board', null, 'u1')], 'leave');
    expect(back.value_minor).toBe(parts[0]!.value_minor);
  });

  it('values a unit of a model without slots as it is', () => {
    const plain = new Map([
      ['pocket-1', pocketModel({ slots: [], blocks: pocketModel().file.blocks.map(({ id, name }) => ({ id, name })) })],
    ]);
    const { decision } = createAdvisor(plain).fileParts(benchOf(one(), plain), 'u1');
    const whole = fileOf('u1', one()).decision;
    expect(decision.options[3]!.value_minor).toBe(whole.options[3]!.value_minor);
  });

  it('gives a hopeless board up for a good one in the drawer', () => {
    const steps: Steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      ...goodUnit('u2'),
      ...deadProcessor('u1'),
      moved('b2', 'board', 'u2', null),
    ];
    const { decision, advice } = fileWithoutChecks('u1', steps);
    expect(decision.road).toBe('transplant');
    expect(advice).toMatchObject({ do: 'transplant', id: 'road.transplant', remedy: { slot: 'board', donors: [{ item_id: 'b2' }] } });
    expect(advice.remedy!.cautions).toEqual([]);
  });

  it('names a donor once: by the unit it came out of, by the unit it sits in, or by its own name', () => {
    const two: Steps = [...bought('lot', 'marsh-lane', ['u1', 'u2']), ...deadProcessor('u1')];
    const taken: Steps = [
      ...two,
      ...goodUnit('u2'),
      ['transplant-done', { assembly_id: 'b2', name: 'Board of #2', slot: 'board', from_item: 'u2', to_item: null }],
    ];
    const loose = fileWithoutChecks('u1', taken).advice;
    expect(loose.headline).toBe('Give it the board that came out of #2');
    expect(loose.why.join(' ')).toContain('The board that came out of #2: ');
    const cracked = [
      saw('u2', 'display', 'cracked'),
      tried('u2', 'picture', 'fails'),
      tried('u2', 'sound', 'works'),
      tried('u2', 'power', 'works'),
    ];
    const unit = fileWithoutChecks('u1', [...two, ...cracked, ['advice-declined', { item_id: 'u2', advice: 'road.repair' }]]).advice;
    expect(unit.headline).toBe('Give it the board of Unit u2');
    const spare = { item_id: 'b9', name: 'Spare board', kind: 'assembly', model_id: 'pocket-1', slot: 'board', expected_value_minor: 1000 };
    const bare = [
      'lot-bought',
      { lot_id: 'spares', title: 'spares', seller: 'hill-foot', price_minor: 100, currency: 'GBP', items: [spare] },
    ] as const;
    const alone = fileWithoutChecks('u1', [...two, [...bare], ['item-received', { item_id: 'b9' }]]).advice;
    expect(alone.headline).toBe('Give it "Spare board" from the drawer');
  });

  it('weighs a donor by its own evidence: a board that failed elsewhere does not tempt', () => {
    const bad: Steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      ...deadProcessor('u2'),
      ...deadProcessor('u1'),
      moved('b2', 'board', 'u2', null),
    ];
    expect(fileOf('u1', bad).decision.road).not.toBe('transplant');
  });

  it('says what was assumed when the model is priced in another currency', () => {
    const steps: Steps = [['bench-set', { currency: 'EUR' }], ...bought('lot', 'marsh-lane', ['u1'])];
    expect(fileOf('u1', steps).decision.why.join(' ')).toMatch(/Assumed: .*GBP .* as EUR/);
    expect(fileOf('u1', one()).decision.why.join(' ')).not.toContain('Assumed');
  });
});

const goodUnit = (id: string): Steps => ['power', 'picture', 'sound'].flatMap((fn) => [tried(id, fn, 'works'), tried(id, fn, 'works')]);

describe('the drawer', () => {
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
    expect(belief.hypotheses[0]!.faults.map(({ name }) => name)).toContain('Processor is not there');
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
