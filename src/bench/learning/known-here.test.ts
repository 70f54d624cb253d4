import { describe, expect, it } from 'vitest';
import { createAdvisor } from '../advice/index.ts';
import { benchOf, bought, did, tried } from '../advice/testing/bench-of.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { learner } from './index.ts';

type Steps = Parameters<typeof benchOf>[0];
const models = pocketModels();
const shipped = models.get('pocket-1')!;
const model = (...steps: Steps) => learner(models)(benchOf(steps)).models.get('pocket-1')!;
const lot = (...units: string[]): Steps => bought('lot', 'marsh-lane', units);
const gone = (unit: string): Steps[number] => ['kept', { item_id: unit }];
const seen = (sale_id: string, price_minor: number): Steps[number] => [
  'sale-seen',
  { sale_id, model_id: 'pocket-1', day: '2026-01-01', price_minor, currency: 'GBP', condition: 'B' },
];
/** All points at the contacts: it has power, and neither picture nor sound. */
const cleaned = (unit: string, outcome: string): Steps => [
  tried(unit, 'power', 'works'),
  tried(unit, 'picture', 'fails'),
  tried(unit, 'sound', 'fails'),
  did(unit, 'clean-contacts', outcome),
  gone(unit),
];
const cleaning = (of: typeof shipped) => of.file.remedies.find(({ id }) => id === 'clean-contacts')!;

describe('a model as it is known at a bench', () => {
  it('is the shipped one while nothing was learned', () => {
    expect(model(...lot('u1'))).toBe(shipped);
  });

  it('has the chances and minutes of the jobs that were done', () => {
    const failed = model(...lot('u1', 'u2'), ...cleaned('u1', 'not-mended'), ...cleaned('u2', 'not-mended'));
    const mended = model(...lot('u1', 'u2'), ...cleaned('u1', 'mended'), ...cleaned('u2', 'mended'));
    const chances = (of: typeof shipped) => Object.values(cleaning(of).mends);
    chances(shipped).forEach((chance, i) => {
      expect(chances(failed)[i]).toBeLessThan(chance - 0.02);
      expect(chances(mended)[i]).toBeGreaterThan(chance + 0.005);
    });
    expect(cleaning(mended).minutes).not.toBe(cleaning(shipped).minutes);
  });

  it('sells for what such things were seen to sell for', () => {
    const dear = model(...['a', 'b', 'c', 'd', 'e', 'f'].map((id) => seen(id, 1.5 * shipped.file.prices.working)));
    expect(dear.file.prices.working).toBeGreaterThan(1.25 * shipped.file.prices.working);
    expect(dear.file.prices.for_parts).toBeGreaterThan(shipped.file.prices.for_parts);
  });

  it('shows at its points what units showed that were proved', () => {
    const point = shipped.file.points.find(({ id }) => id === 'vsys')!;
    const reads: Steps[number] = ['reading-taken', { item_id: 'u1', point: 'vsys', mode: point.mode, value: 3.4 }];
    const proof: Steps = [
      ['proof-step-done', { item_id: 'u1', step: 'works.power', outcome: 'pass' }],
      ['graded', { item_id: 'u1', grade: 'B', scale: 'salvor-1' }],
    ];
    expect(model(...lot('u1'), reads).own).toBeUndefined();
    const { own } = model(...lot('u1'), reads, ...proof);
    const { own: none } = model(...lot('u1'), ...proof);
    expect(none?.references.get('vsys')).toBeUndefined();
    expect(own!.references.get('vsys')!.mean).toBeGreaterThan(3.28);
    expect(own!.references.get('vsys')!.mean).toBeLessThan(3.4);
  });

  it('is the same object after a reading, so that what was thought with it is found again', () => {
    const learn = learner(models);
    const steps: Steps = [...lot('u1', 'u2'), ...cleaned('u1', 'mended'), seen('a', 5000)];
    const before = learn(benchOf(steps)).models.get('pocket-1')!;
    const reading: Steps[number] = ['reading-taken', { item_id: 'u2', point: 'vsys', mode: 'volts', value: 3.3 }];
    expect(learn(benchOf([...steps, reading])).models.get('pocket-1')).toBe(before);
    const changed = learn(benchOf([...steps, reading, ...cleaned('u2', 'not-mended')])).models.get('pocket-1')!;
    expect(changed.own!.stamp).not.toBe(before.own!.stamp);
  });
});

describe('advice', () => {
  const asked: Steps = [
    ...bought('old', 'hill-foot', ['a', 'b', 'c', 'd']),
    ...bought('new', 'marsh-lane', ['u1']),
    tried('u1', 'picture', 'fails'),
  ];
  const contacts = (...steps: Steps) => {
    const { belief, decision } = createAdvisor(models).fileParts(benchOf([...asked, ...steps]), 'u1');
    return { chance: belief.blocks.find(({ id }) => id === 'slot-contacts')?.chance, decision };
  };

  it('of a unit follows what was wrong with others of its model', () => {
    const after = ['a', 'b', 'c', 'd'].flatMap((unit) => cleaned(unit, 'mended'));
    expect(contacts(...after).chance).toBeGreaterThan(contacts().chance! + 0.02);
  });

  it('says from what a price was learned', () => {
    const why = (...steps: Steps): string =>
      contacts(...steps)
        .decision.options.flatMap((option) => option.why)
        .join(' ');
    expect(why(seen('a', 7000), seen('b', 7000))).toMatch(/sells for 6\d\.\d\d GBP \(60\.00 GBP by its model, 2 known sales counted\)/);
    expect(why()).not.toContain('by its model');
  });

  it('counts the prices that were seen', () => {
    const value = (...steps: Steps) => contacts(...steps).decision.options.find(({ road }) => road === 'repair')!.value_minor;
    expect(value(seen('a', 20_000), seen('b', 20_000))).toBeGreaterThan(value());
  });
});
