import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { learnedView } from './index.ts';

const models = smallModels();
const bulb = (outcome: string, minutes = 5): Step => ['remedy-done', { item_id: 'lamp-a', remedy: 'new-bulb', minutes, outcome }] as Step;
const gone: Step = ['kept', { item_id: 'lamp-a' }];
const number = (id: string, ...steps: readonly Step[]) =>
  learnedView(foldLog(testLog(...oneLamp, ...steps, gone), models), models).numbers.find((each) => each.id === id);
const CHANCE = 'remedy-chance.lamp-1.new-bulb';
const TIME = 'remedy-time.lamp-1.new-bulb';

describe('what is learned', () => {
  test('is nothing before a job was done', () => {
    expect(number(CHANCE)).toBeUndefined();
  });

  test('counts a job once the unit has left the bench', () => {
    const { numbers } = learnedView(foldLog(testLog(...oneLamp, bulb('mended')), models), models);
    expect(numbers).toEqual([]);
  });

  test('of a remedy follows its outcomes, each of which can be traced to its job', () => {
    const after = number(CHANCE, bulb('mended'), bulb('not-mended'), bulb('not-mended'))!;
    expect(after.mean).toBeLessThan(after.before);
    expect(after.jobs).toHaveLength(3);
    expect(after.jobs[0]!.text).toMatch(/#1 .*: mended, 5 min/);
    expect(after.low).toBeLessThan(after.mean);
  });

  test('an outcome that was not tried yet says nothing of the chance, but its minutes count', () => {
    expect(number(CHANCE, bulb('not-tried-yet', 50))).toBeUndefined();
    expect(number(TIME, bulb('not-tried-yet', 50))!.mean).toBeGreaterThan(number(TIME, bulb('not-tried-yet', 1))!.mean);
  });

  test('begins anew after a reset, and the log still holds the jobs', () => {
    const reset: Step = ['learned-reset', { about: CHANCE }];
    expect(number(CHANCE, bulb('mended'), reset)).toBeUndefined();
    expect(number(CHANCE, bulb('mended'), reset, bulb('not-mended'))!.jobs).toHaveLength(1);
  });

  test('a fault that was mended is met more often than the model says', () => {
    const rate = learnedView(foldLog(testLog(...oneLamp, bulb('mended'), gone), models), models).numbers.find(
      ({ id }) => id === 'fault-rate.lamp-1.bulb-open',
    )!;
    expect(rate.mean).toBeGreaterThan(rate.before);
    expect(rate.jobs[0]!.weight).toBeLessThanOrEqual(1);
  });

  test('fades with the half-life that the person sets, or not at all', () => {
    const log = testLog(...oneLamp, bulb('mended'), gone, ['learning-set', { half_life_days: 365 }], ['note-written', { text: 'later' }]);
    const aged = log.map((stored, i) =>
      i === log.length - 1 ? { ...stored, event: { ...stored.event, at: '2036-01-01T00:00:00.000Z' } } : stored,
    );
    const weight = (events: typeof log) =>
      learnedView(foldLog(events, models), models).numbers.find(({ id }) => id === CHANCE)!.jobs[0]!.weight;
    expect(weight(aged as typeof log)).toBeLessThan(0.002);
    const lasting = testLog(...oneLamp, bulb('mended'), gone, ['learning-set', { half_life_days: null }]);
    expect(weight(lasting)).toBe(1);
  });
});
