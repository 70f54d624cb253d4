import { describe, expect, it } from 'vitest';
import { OutlookView, WatchView, type ScoutQuestion } from '../views/index.ts';
import { createAdvisor } from './advisor.ts';
import { benchOf, bought, claims, moved, tried } from './testing/bench-of.ts';
import { pocketModels } from './testing/pocket-model.ts';

type Steps = Parameters<typeof benchOf>[0];

const ask = (changes: Partial<ScoutQuestion> = {}): ScoutQuestion => ({
  model_id: 'pocket-1',
  seller: 'marsh-lane',
  count: 1,
  price_minor: 1000,
  postage_minor: 300,
  tax_minor: 0,
  rate: 1,
  claims: [],
  ...changes,
});

function outlook(question: Partial<ScoutQuestion> = {}, steps: Steps = []): OutlookView {
  const answer = createAdvisor(pocketModels()).outlook(benchOf(steps), ask(question));
  if ('ok' in answer) throw new Error(answer.message);
  return OutlookView.parse(answer);
}

/** Two units of a seller who said that they work; they do, or they do not. */
const history = (outcome: 'works' | 'fails'): Steps => [
  ...bought('old', 'marsh-lane', ['o1', 'o2', 'o3'], 'pocket-1', [
    claims('power', 'works'),
    claims('sound', 'works'),
    claims('picture', 'works'),
  ]),
  ...['o1', 'o2', 'o3'].flatMap((id) => ['power', 'sound', 'picture'].map((fn) => tried(id, fn, outcome))),
];

describe('the outlook of a listing', () => {
  it('gives a worth, a range around it, and the ceiling above which it is expected to lose', () => {
    const got = outlook();
    expect(got.ceiling_minor).toBeGreaterThan(0);
    expect(Math.abs(got.ceiling_minor - got.value_minor)).toBeLessThanOrEqual(1);
    expect(got.low_minor).toBeLessThan(got.value_minor);
    expect(got.high_minor).toBeGreaterThan(got.value_minor);
    expect(got.asks_minor).toBe(1300);
  });

  it('buys below the ceiling, haggles a little above it, leaves far above', () => {
    const { ceiling_minor: ceiling } = outlook();
    const at = (price: number) => outlook({ price_minor: Math.round(price), postage_minor: 0 });
    expect(at(ceiling * 0.3).verdict).toBe('buy');
    expect(at(ceiling * 1.2).verdict).toBe('haggle');
    expect(at(ceiling * 3).verdict).toBe('leave');
    expect(at(ceiling * 3).loss_chance).toBeGreaterThan(at(ceiling * 0.3).loss_chance);
  });

  it('hears a claim more from a seller who was right before than from one who was wrong', () => {
    const question = { claims: [claims('picture', 'works'), claims('sound', 'works')] as ScoutQuestion['claims'] };
    const honest = outlook(question, history('works'));
    const unknown = outlook(question);
    const liar = outlook(question, history('fails'));
    expect(honest.honesty).toEqual({ chance: 12.5 / 14, claims_checked: 9 });
    expect(honest.works_as_is).toBeGreaterThan(unknown.works_as_is);
    expect(unknown.works_as_is).toBeGreaterThan(liar.works_as_is);
    expect(honest.value_minor).toBeGreaterThan(liar.value_minor);
  });

  it('adds up the units of a lot: the mean in proportion, the spread less', () => {
    const [unit, lot] = [outlook(), outlook({ count: 16 })];
    expect(Math.abs(lot.value_minor - 16 * unit.value_minor)).toBeLessThanOrEqual(16);
    expect(lot.high_minor - lot.low_minor).toBeLessThan(8 * (unit.high_minor - unit.low_minor));
    expect(lot.minutes).toBeCloseTo(16 * unit.minutes, -1);
  });

  it('turns the price into the currency of the bench at the rate given', () => {
    expect(outlook({ currency: 'JPY', rate: 0.005, price_minor: 2000, postage_minor: 400 }).asks_minor).toBe(1200);
  });

  it('is worth more to a bench whose drawer can complete it, for as many units as it can', () => {
    const question = { claims: [claims('picture', 'fails'), claims('sound', 'fails')] as ScoutQuestion['claims'] };
    const boards: Steps = [
      ...bought('old', 'hill-foot', ['g1']),
      ...['power', 'picture', 'sound'].flatMap((fn) => [tried('g1', fn, 'works'), tried('g1', fn, 'works')]),
      moved('b1', 'board', 'g1', null),
    ];
    const without = outlook(question);
    const within = outlook(question, boards);
    expect(within.value_minor).toBeGreaterThanOrEqual(without.value_minor);
    expect(outlook({ ...question, count: 50 }, boards).value_minor).toBeLessThanOrEqual(50 * within.value_minor + 50);
  });

  it('refuses a model that is not known, and names those that are', () => {
    const answer = createAdvisor(pocketModels()).outlook(benchOf([]), ask({ model_id: 'pocket-7' }));
    expect(answer).toEqual({
      ok: false,
      code: 'unknown-model',
      index: 0,
      field: 'model_id',
      message: '"pocket-7" is not a known model; there are pocket-1, pocket-2',
    });
  });
});

describe('the watched listings', () => {
  it('show each with its question and its outlook of today, open ones first', () => {
    const weigh = (id: string): Steps[number] => [
      'listing-weighed',
      { listing_id: id, title: id, seller: 'marsh-lane', model_id: 'pocket-1', price_minor: 900, currency: 'GBP' },
    ];
    const state = benchOf([weigh('a'), weigh('b'), weigh('c'), ['listing-dropped', { listing_id: 'b', reason: 'too far' }]]);
    const { listings } = WatchView.parse(createAdvisor(pocketModels()).watch(state));
    expect(listings.map(({ id, fate }) => [id, fate])).toEqual([
      ['c', 'open'],
      ['a', 'open'],
      ['b', 'dropped'],
    ]);
    expect(listings[0]!.outlook.asks_minor).toBe(900);
    expect(listings[0]!.question.model_id).toBe('pocket-1');
  });

  it('put what closes soonest first, and count import tax in what is asked', () => {
    const weigh = (id: string, more: object): Steps[number] => [
      'listing-weighed',
      { listing_id: id, title: id, seller: 'marsh-lane', model_id: 'pocket-1', price_minor: 900, currency: 'GBP', ...more },
    ];
    const state = benchOf([
      weigh('late', { closes_at: '2026-07-02T10:00:00+02:00' }),
      weigh('soon', { closes_at: '2026-07-02T07:30:00Z', tax_minor: 250 }),
      weigh('open', {}),
    ]);
    const { listings } = WatchView.parse(createAdvisor(pocketModels()).watch(state));
    expect(listings.map(({ id }) => id)).toEqual(['soon', 'late', 'open']);
    expect(listings[0]).toMatchObject({ closes_at: '2026-07-02T07:30:00Z', outlook: { asks_minor: 1150 } });
  });

  it('say that nothing can be reckoned where the model is gone', () => {
    const state = benchOf(bought('lot', 'marsh-lane', ['u1']));
    const [listing] = createAdvisor(new Map()).watch(state).listings;
    expect(listing!.outlook).toMatchObject({ verdict: 'leave', ceiling_minor: 0 });
    expect(listing!.outlook.why.join()).toContain('"pocket-1" is not a known model');
  });
});
