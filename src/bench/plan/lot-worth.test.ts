import { describe, expect, it } from 'vitest';
import { createAdvisor } from '../advice/index.ts';
import { benchOf, bought, claims, moved } from '../advice/testing/bench-of.ts';
import { deadProcessor, goodUnit, type Steps } from '../advice/testing/files.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { LotQuestion, LotView } from '../views/index.ts';
import { openPlanRoom } from './plan-room.ts';
import { plainWorker } from './testing/plain-worker.ts';

const advisor = createAdvisor(pocketModels());

async function weigh(steps: Steps, question: Partial<LotQuestion> = {}): Promise<LotView> {
  const room = openPlanRoom(plainWorker(), () => undefined);
  const asked = LotQuestion.parse({ units: [{ model_id: 'pocket-1' }], price_minor: 1500, ...question });
  const view = await room.lot(advisor.desk(benchOf(steps)), asked);
  if ('ok' in view) throw new Error(view.message);
  return LotView.parse(view);
}

describe('the worth of a lot to the pile', () => {
  it('gives a ceiling that is the lower of the two by risk and by the hour, and a curve that falls with the price', async () => {
    const lot = await weigh([]);
    expect(lot.worth_minor).toBeGreaterThan(0);
    expect(Math.abs(lot.ceiling_minor - Math.max(0, Math.min(lot.by_loss_minor, lot.by_hour_minor)))).toBeLessThanOrEqual(1);
    for (let i = 1; i < lot.curve.length; i++) {
      expect(lot.curve[i]!.profit_minor).toBeLessThan(lot.curve[i - 1]!.profit_minor);
      expect(lot.curve[i]!.loss_chance).toBeGreaterThanOrEqual(lot.curve[i - 1]!.loss_chance);
    }
    expect(lot.at_asked.price_minor).toBe(1500);
    expect(lot.at_asked.profit_minor).toBeCloseTo(lot.worth_minor - lot.bias_minor - 1500, -1);
  });

  it('takes nothing off where nobody else bids, and more the more bid', async () => {
    const [alone, five, twenty] = await Promise.all([1, 5, 20].map((bidders) => weigh([['plan-set', { bidders, error_share: 0.3 }]])));
    expect(alone!.bias_minor).toBe(0);
    expect(five!.bias_minor).toBeCloseTo(0.3 * five!.worth_minor * (4 / 6), -1);
    expect(twenty!.ceiling_minor).toBeLessThan(five!.ceiling_minor);
  });

  it('asks less money for more risk, and less risk for less money', async () => {
    const bold = await weigh([['plan-set', { lot_loss_chance: 0.5 }]]);
    const careful = await weigh([['plan-set', { lot_loss_chance: 0.05 }]]);
    expect(careful.by_loss_minor).toBeLessThan(bold.by_loss_minor);
  });

  it('is worth more to a pile that has the board which such units lack', async () => {
    const dead = {
      units: [{ model_id: 'pocket-1', count: 1, claims: [{ about: 'place' as const, place: 'processor', sees: 'missing' as const }] }],
    };
    const boards: Steps = [
      ...bought('lot', 'marsh-lane', ['u1']),
      ...goodUnit('u1'),
      moved('b1', 'board', 'u1', null),
      ['scrapped', { item_id: 'u1', reason: 'crushed' }],
    ];
    const [bare, helped] = [await weigh([], dead), await weigh(boards, dead)];
    expect(helped.worth_minor).toBeGreaterThan(bare.worth_minor);
  });

  it('weighs several units of several kinds together, with what is said of each', async () => {
    const units = [
      { model_id: 'pocket-1', count: 2, claims: [claims('power', 'works') as never] },
      { model_id: 'pocket-2', count: 1, claims: [] },
    ];
    const [one, three] = [await weigh([]), await weigh([], { units })];
    expect(three.worth_minor).toBeGreaterThan(one.worth_minor);
    expect(three.why[0]).toContain('these 3');
  });

  it('counts postage, tax and the rate of a foreign price', async () => {
    const lot = await weigh([], { price_minor: 1000, postage_minor: 300, tax_minor: 200, currency: 'EUR', rate: 0.8 });
    expect(lot.asks_minor).toBe(1200);
  });

  it('is the same when asked again, and refuses what it does not know', async () => {
    const steps: Steps = [...bought('lot', 'marsh-lane', ['u1']), ...deadProcessor('u1')];
    expect(await weigh(steps)).toEqual(await weigh(steps));
    const room = openPlanRoom(plainWorker(), () => undefined);
    const desk = advisor.desk(benchOf([]));
    const unheard = LotQuestion.parse({ units: [{ model_id: 'nothing-such' }], price_minor: 1 });
    expect(await room.lot(desk, unheard)).toMatchObject({ ok: false, code: 'unknown-model' });
    const many = LotQuestion.parse({
      units: [
        { model_id: 'pocket-1', count: 30 },
        { model_id: 'pocket-1', count: 11 },
      ],
      price_minor: 1,
    });
    expect(await room.lot(desk, many)).toMatchObject({ ok: false, field: 'units' });
  });
});
