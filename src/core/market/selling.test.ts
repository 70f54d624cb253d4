import { describe, expect, it } from 'vitest';
import { randomStream } from '../numeric/index.ts';
import {
  answerBid,
  askCurve,
  bestAsk,
  DEMAND_BEFORE,
  feeOf,
  learnDemand,
  MarketError,
  priceSteps,
  saleRate,
  tableOn,
  type Offer,
  type Selling,
} from './index.ts';

const SELLING: Selling = {
  fairMinor: 10_000,
  net: (price) => 0.88 * price - 400,
  waitMinorPerDay: 10,
  giveUpMinor: 3000,
  costMinor: 4000,
  makeDays: 14,
};

describe('demand', () => {
  it('is what was thought before while nothing was offered', () => {
    const learned = learnDemand([]);
    expect(learned.perDay).toBeCloseTo(DEMAND_BEFORE.perDay, 12);
    expect(learned.elasticity).toBeCloseTo(DEMAND_BEFORE.elasticity, 12);
  });

  it('comes out of many offers, sold and unsold, as it was', () => {
    const random = randomStream('offers');
    const truth = { perDay: 0.08, elasticity: 2.5, weight: 1 };
    const offers = Array.from({ length: 1500 }, (): Offer => {
      const askShare = 0.7 + 0.8 * random();
      const days = -Math.log(1 - random()) / saleRate(truth, askShare);
      return days < 40 ? { askShare, days, sold: true } : { askShare, days: 40, sold: false };
    });
    const learned = learnDemand(offers);
    expect(Math.abs(learned.perDay / truth.perDay - 1)).toBeLessThan(0.08);
    expect(Math.abs(learned.elasticity - truth.elasticity)).toBeLessThan(0.3);
  });

  it('refuses an offer that asks nothing', () => {
    expect(() => learnDemand([{ askShare: 0, days: 1, sold: false }])).toThrow(MarketError);
  });
});

describe('the asking price', () => {
  it('that earns most a month lies between a give-away and a dream', () => {
    const curve = askCurve(DEMAND_BEFORE, SELLING);
    const best = bestAsk(curve);
    expect(best.askMinor).toBeGreaterThan(curve[0]!.askMinor);
    expect(best.askMinor).toBeLessThan(curve.at(-1)!.askMinor);
  });

  it('is lower when the next one is ready at once than when it takes a year, and rises with patience', () => {
    const at = (makeDays: number) => bestAsk(askCurve(DEMAND_BEFORE, { ...SELLING, makeDays, waitMinorPerDay: 0 })).askMinor;
    expect(at(1)).toBeLessThan(at(365));
  });

  it('steps down while nobody buys, for then there are fewer buyers than thought', () => {
    const steps = priceSteps(DEMAND_BEFORE, SELLING);
    expect(steps.at(-1)!.askMinor).toBeLessThan(steps[0]!.askMinor);
    steps.slice(1).forEach((step, i) => expect(step.askMinor).toBeLessThanOrEqual(steps[i]!.askMinor + 1e-9));
    steps.forEach(({ worthMinor }) => expect(worthMinor).toBeGreaterThanOrEqual(SELLING.giveUpMinor));
  });

  it('of one last week is the one with the most expected money, looked for by hand', () => {
    const [step] = priceSteps(DEMAND_BEFORE, SELLING, 1);
    const k = DEMAND_BEFORE.weight;
    const worth = (share: number): number => {
      const stays = (k / (k + 7 * saleRate(DEMAND_BEFORE, share))) ** k;
      return (1 - stays) * SELLING.net(share * SELLING.fairMinor) + stays * SELLING.giveUpMinor - 70;
    };
    const best = Math.max(...Array.from({ length: 51 }, (_, i) => worth(0.6 + i / 50)));
    expect(step!.worthMinor).toBeCloseTo(Math.max(best, SELLING.giveUpMinor), 6);
  });
});

describe('a bid', () => {
  it('that leaves as much as waiting is accepted, and one below is countered above the reserve', () => {
    const reserve = (7000 + 400) / 0.88;
    expect(answerBid(reserve + 1, 11_000, 7000, SELLING).do).toBe('accept');
    const low = answerBid(6000, 11_000, 7000, SELLING);
    expect(low.do).toBe('counter');
    expect(low.reserveMinor).toBeCloseTo(reserve, 6);
    expect(low.counterMinor).toBeGreaterThan(reserve);
    expect(low.gainMinor).toBeLessThan(0);
  });
});

describe('fees', () => {
  const table = {
    fromDay: 100,
    bands: [
      { upToMinor: 5000, percent: 10 },
      { upToMinor: null, percent: 2 },
    ],
    fixedMinor: 30,
    capMinor: 550,
  };

  it('go by bands, then the cap, then the fixed part', () => {
    expect([0, 4000, 7000, 20_000].map((price) => feeOf(table, price))).toEqual([30, 430, 570, 580]);
    expect(() => feeOf(table, -1)).toThrow(MarketError);
  });

  it('are those of the latest table that has begun', () => {
    const next = { ...table, fromDay: 200 };
    expect([tableOn([next, table], 99), tableOn([next, table], 199), tableOn([table, next], 200)]).toEqual([undefined, table, next]);
  });
});
