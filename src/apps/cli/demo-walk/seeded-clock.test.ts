import { expect, test } from 'vitest';
import { seededClock } from './seeded-clock.ts';

const START = new Date('2026-05-04T09:00:00Z');

test('the same start and seed give the same ids, another seed gives others', () => {
  const ids = (seed: string): string[] => {
    const clock = seededClock(START, seed);
    return [clock.newId(), clock.newId()];
  };
  expect(ids('a')).toEqual(ids('a'));
  expect(ids('a')).not.toEqual(ids('b'));
});

test('ids sort in the order of their making, within a moment and over time', () => {
  const clock = seededClock(START, 'a');
  const ids = Array.from({ length: 300 }, (_, i) => {
    if (i % 100 === 99) clock.pass(1);
    return clock.newId();
  });
  expect(ids).toEqual([...ids].sort());
  expect(new Set(ids).size).toBe(300);
});

test('time passes by minutes and goes to a given moment', () => {
  const clock = seededClock(START, 'a');
  clock.pass(90.5);
  expect(clock.now().toISOString()).toBe('2026-05-04T10:30:30.000Z');
  clock.goTo(START);
  expect(clock.now()).toEqual(START);
});
