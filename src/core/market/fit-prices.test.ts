import { describe, expect, it } from 'vitest';
import { randomStream } from '../numeric/index.ts';
import { backTest, fitPrices, likelyDuplicates, MarketError, outlyingSales, priceOf, weakPrior, type Sale } from './index.ts';

const PRIOR = weakPrior(6000, 0.25);
const asNew = { condition: 'B', complete: 1, original: 1 } as const;

const sale = (id: string, priceMinor: number, day: number, more: Partial<Sale> = {}): Sale => ({ id, priceMinor, day, ...asNew, ...more });

/** A normal number from two uniform ones. Box & Muller (1958). */
const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Sales around 8000 whose grade costs 20 % a step; one in fifteen is wild. */
function market(seed: string, count: number): Sale[] {
  const random = randomStream(seed);
  return Array.from({ length: count }, (_, i) => {
    const condition = (['A', 'B', 'C', 'D'] as const)[Math.floor(random() * 4)]!;
    const step = { A: -1, B: 0, C: 1, D: 2 }[condition];
    const wild = random() < 1 / 15 ? 1.2 * normal(random) : 0;
    return sale(`s${i}`, Math.round(8000 * Math.exp(-0.2 * step + 0.2 * normal(random) + wild)), 1000 + i * 3, { condition });
  });
}

describe('a price', () => {
  it('is the typical one, with a wide interval, while no sale is known', () => {
    const said = priceOf(fitPrices([], PRIOR, 1000), asNew);
    expect(said.middleMinor).toBeCloseTo(6000, 6);
    expect(said.highMinor / said.lowMinor).toBeGreaterThan(2);
  });

  it('follows the sales as they become many, and its interval shrinks to the spread of single prices', () => {
    const sales = market('many', 400);
    const few = priceOf(fitPrices(sales.slice(0, 4), PRIOR, 1012), asNew);
    const many = priceOf(fitPrices(sales, PRIOR, 2200, 1e6), asNew);
    expect(Math.abs(many.middleMinor / 8000 - 1)).toBeLessThan(0.05);
    expect(Math.log(many.highMinor / many.lowMinor)).toBeLessThan(Math.log(few.highMinor / few.lowMinor));
  });

  it('learns what a grade costs', () => {
    const fit = fitPrices(market('grades', 300), PRIOR, 1900, 1e6);
    expect(Math.abs(fit.coefficients[1]! + 0.2)).toBeLessThan(0.04);
  });

  it('is hardly moved by one wild sale, which is named', () => {
    const sales = market('calm', 40).filter(({ priceMinor }) => priceMinor > 3000 && priceMinor < 16_000);
    const calm = priceOf(fitPrices(sales, PRIOR, 1130), asNew);
    const fit = fitPrices([...sales, sale('wild', 90_000, 1130)], PRIOR, 1130);
    expect(Math.abs(priceOf(fit, asNew).middleMinor / calm.middleMinor - 1)).toBeLessThan(0.06);
    expect(outlyingSales(fit)[0]!.id).toBe('wild');
  });

  it('believes a sale of today more than an old one', () => {
    const [old, fresh] = [
      Array.from({ length: 10 }, (_, i) => sale(`o${i}`, 4000, 0)),
      Array.from({ length: 10 }, (_, i) => sale(`f${i}`, 9000, 1000)),
    ];
    expect(priceOf(fitPrices([...old, ...fresh], PRIOR, 1000, 180), asNew).middleMinor).toBeGreaterThan(7500);
  });

  it('of nothing is refused', () => {
    expect(() => fitPrices([sale('free', 0, 1)], PRIOR, 1)).toThrow(MarketError);
  });
});

it('said from earlier sales only, an interval of 80 % holds about so many of the later ones', () => {
  const tests = ['one', 'two', 'three', 'four'].map((seed) => backTest(market(seed, 120), PRIOR, { skip: 20 }));
  const coverage = tests.reduce((sum, each) => sum + each.coverage, 0) / tests.length;
  expect(coverage).toBeGreaterThan(0.75);
  expect(coverage).toBeLessThan(0.86);
});

it('finds a sale that was written down twice', () => {
  const sales = [sale('a', 5000, 10), sale('b', 5000, 11), sale('c', 5000, 30), sale('d', 5000, 10, { condition: 'C' })];
  expect(likelyDuplicates(sales)).toEqual([{ id: 'b', of: 'a' }]);
});
