import { describe, expect, it } from 'vitest';
import { benchOf, bought, did, tried } from '../advice/testing/bench-of.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { BODIES } from '../events/index.ts';
import { learner } from './index.ts';
import { readShared } from './read-shared.ts';
import { sharedBundle } from './shared-bundle.ts';

type Steps = Parameters<typeof benchOf>[0];
const models = pocketModels();
const shipped = models.get('pocket-1')!;
const UNITS = ['u1', 'u2', 'u3', 'u4', 'u5', 'u6'];
const worked = (outcome: string): Steps => [
  ...bought('lot-of-secrets', 'marsh-lane', UNITS),
  ...UNITS.flatMap((unit): Steps => [
    tried(unit, 'power', 'works'),
    tried(unit, 'picture', 'fails'),
    tried(unit, 'sound', 'fails'),
    did(unit, 'clean-contacts', outcome),
    ['sold', { item_id: unit, as: 'working', price_minor: 7777, currency: 'GBP', buyer: 'A. Buyer' }],
  ]),
];
const bundle = sharedBundle(benchOf(worked('not-mended')), shipped);
const file = JSON.stringify(bundle);
const take = (weight: number, text = file): Steps[number] => {
  const read = readShared(text, 'the next bench', weight);
  if (!read.ok) throw new Error(read.detail);
  return ['learned-taken-in', read.body];
};
const chance = (steps: Steps): number =>
  Object.values(
    learner(models)(benchOf(steps))
      .models.get('pocket-1')!
      .file.remedies.find(({ id }) => id === 'clean-contacts')!.mends,
  )[0]!;
const problemsOf = (text: string): string[] => {
  const read = readShared(text, 'x', 1);
  if (!read.ok) return [read.detail];
  const parsed = BODIES['learned-taken-in'].safeParse(read.body);
  return parsed.success ? [] : parsed.error.issues.map(({ message }) => message);
};

describe('what is learned and given away', () => {
  it('holds rates, chances and minutes, and nothing of money, people, lots, days or items', () => {
    expect([...new Set(bundle.numbers.map(({ about }) => about))].sort()).toEqual(['fault-rate', 'remedy-chance', 'remedy-time']);
    expect(file).not.toMatch(/7777|77\.77|2000|marsh|Buyer|secrets|20\d\d-|u1|GBP|price/);
    expect(Object.keys(bundle).sort()).toEqual(['format', 'model_id', 'model_name', 'numbers', 'version']);
  });

  it('moves another bench by the weight that its person sets', () => {
    const [none, some, all] = [chance([]), chance([take(0.2)]), chance([take(1)])];
    expect(some).toBeLessThan(none - 0.01);
    expect(all).toBeLessThan(some - 0.01);
  });

  it('counts beside own jobs as if they had been done here', () => {
    const here = chance(worked('not-mended'));
    expect(chance([take(1)])).toBeCloseTo(here, 2);
  });

  it('is not passed on, can be undone by a reset of the number, and never weighs more than twenty jobs', () => {
    expect(sharedBundle(benchOf([take(1)]), shipped).numbers).toEqual([]);
    expect(chance([take(1), ['learned-reset', { about: 'remedy-chance.pocket-1.clean-contacts' }]])).toBeCloseTo(chance([]), 9);
    const loud = (jobs: number): string =>
      JSON.stringify({ ...bundle, numbers: [{ about: 'remedy-chance', of: 'clean-contacts', mean: 0, jobs }] });
    expect(chance([take(1, loud(10_000))])).toBeCloseTo(chance([take(1, loud(20))]), 9);
  });
});

describe('a file from outside', () => {
  const numbers = (each: object): string => JSON.stringify({ ...bundle, numbers: [each] });

  it('is refused where it is not what it should be', () => {
    expect(problemsOf('{')).toEqual(['it is no file of learned numbers']);
    expect(problemsOf('null')).toEqual(['it is no file of learned numbers']);
    expect(problemsOf(JSON.stringify({ ...bundle, version: 2 }))).toEqual(['it is of a later version of Salvor']);
    expect(problemsOf(JSON.stringify({ ...bundle, numbers: [] }))).toEqual(['it holds no number']);
    expect(problemsOf(' '.repeat(300_000))).toEqual(['it is longer than 200000 letters']);
  });

  it('is refused for a number that cannot be, one of another kind, or one that is there twice', () => {
    expect(problemsOf(numbers({ about: 'remedy-chance', of: 'x', mean: 1.5, jobs: 3 }))).toEqual(['must be a share from 0 to 1']);
    expect(problemsOf(numbers({ about: 'remedy-time', of: 'x', mean: 0, jobs: 3 }))).toEqual([
      'must be minutes above 0 and not above 10000',
    ]);
    expect(problemsOf(numbers({ about: 'price', of: 'x', mean: 1, jobs: 3 }))).toHaveLength(1);
    expect(problemsOf(numbers({ about: 'fault-rate', of: '__proto__', mean: 0.5, jobs: 1e9 }))).not.toEqual([]);
    expect(problemsOf(numbers({ about: 'fault-rate', of: 'x', mean: 0.5, jobs: 3, extra: 'y' }))).toHaveLength(1);
    const twice = { about: 'fault-rate', of: 'x', mean: 0.5, jobs: 3 };
    expect(problemsOf(JSON.stringify({ ...bundle, numbers: [twice, twice] }))).toEqual(['holds a number twice']);
  });

  it('of which the model here knows nothing changes nothing', () => {
    const strange = numbers({ about: 'remedy-chance', of: 'polish-the-moon', mean: 0, jobs: 10 });
    expect(chance([take(1, strange)])).toBe(chance([]));
  });
});
