import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { createAdvisor } from '../advice/index.ts';
import { benchOf } from '../advice/testing/bench-of.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { COMPARED_COLUMNS, comparedCsv } from '../scout/index.ts';
import { CompareQuestion, CompareView } from '../views/index.ts';
import { openPlanRoom } from './plan-room.ts';
import { plainWorker } from './testing/plain-worker.ts';

const advisor = createAdvisor(pocketModels());
const ask = (listings: readonly object[], steps: Parameters<typeof benchOf>[0] = []) =>
  openPlanRoom(plainWorker(), () => undefined).compare(advisor.desk(benchOf(steps)), CompareQuestion.parse({ listings }));

async function compare(listings: readonly object[], steps: Parameters<typeof benchOf>[0] = []): Promise<CompareView> {
  const view = await ask(listings, steps);
  if ('ok' in view) throw new Error(view.message);
  return CompareView.parse(view);
}

const CHEAP = { title: 'cheap', model_id: 'pocket-1', price_minor: 500 };
const DEAR = { title: 'dear', model_id: 'pocket-1', price_minor: 9000 };
const WORKS = {
  title: '=works',
  model_id: 'pocket-1',
  price_minor: 500,
  text: 'Switches on, picture and sound work.',
  seller: 'Marsh Lane',
};

describe('listings side by side', () => {
  it('come by profit an hour at the asked price, with the place that each had', async () => {
    const { listings } = await compare([DEAR, CHEAP, WORKS]);
    expect(listings.at(-1)).toMatchObject({ title: 'dear', index: 0 });
    const hours = listings.map(({ per_hour_minor: hour }) => hour ?? -Infinity);
    expect(hours).toEqual([...hours].sort((a, b) => b - a));
    for (const each of listings) expect(each.profit_minor).toBeLessThanOrEqual(each.worth_minor - each.asks_minor);
  });

  it('hear what is read in their words', async () => {
    const { listings } = await compare([CHEAP, WORKS], [['plan-set', { bidders: 1 }]]);
    const [plain, told] = [listings.find(({ index }) => index === 0)!, listings.find(({ index }) => index === 1)!];
    expect(plain.claims).toEqual([]);
    expect(told.claims).toContain('Sound works');
    expect(told.worth_minor).toBeGreaterThan(plain.worth_minor);
    expect(told.profit_minor).toBe(told.worth_minor - 500);
  });

  it('are lots of as many units as the words tell apart, each with its own claims', async () => {
    const { listings } = await compare([{ ...CHEAP, text: 'Two players. The first one is silent. The second one works.' }]);
    expect(listings[0]!.count).toBe(2);
  });

  it('pay postage, tax and the rate of a foreign price', async () => {
    const { listings } = await compare([{ ...CHEAP, postage_minor: 300, tax_minor: 200, currency: 'EUR', rate: 0.8 }]);
    expect(listings[0]!.asks_minor).toBe(800);
  });

  it('are refused where the model of one is not known, which is named', async () => {
    expect(await ask([CHEAP, { ...CHEAP, model_id: 'nothing-such' }])).toMatchObject({ ok: false, code: 'unknown-model', index: 1 });
  });

  it('come out as a table that a spreadsheet opens without running anything', async () => {
    const { listings, currency } = await compare([WORKS, DEAR]);
    const [header, first] = Papa.parse<string[]>(comparedCsv(listings, currency)).data;
    expect(header).toEqual([...COMPARED_COLUMNS]);
    expect(first!.slice(0, 6)).toEqual(['1', "'=works", 'Marsh Lane', 'pocket-1', '1', '5.00']);
  });
});
