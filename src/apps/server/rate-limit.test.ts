import { expect, it } from 'vitest';
import { rateLimit } from './rate-limit.ts';

it('lets a burst through, then as many as a second allows, each name by itself', () => {
  const limit = rateLimit({ burst: 3, perSecond: 2 });
  const tries = (name: string, nowMs: number, count: number): number =>
    Array.from({ length: count }, () => limit.allows(name, nowMs)).filter(Boolean).length;
  expect(tries('a', 0, 5)).toBe(3);
  expect(tries('b', 0, 1)).toBe(1);
  expect(tries('a', 1000, 5)).toBe(2);
  expect(tries('a', 1_000_000, 5)).toBe(3);
});

it('gives nothing for a clock that is set back', () => {
  const limit = rateLimit({ burst: 1, perSecond: 1 });
  expect([limit.allows('a', 5000), limit.allows('a', 0)]).toEqual([true, false]);
});

it('keeps only so many names in mind', () => {
  const limit = rateLimit({ burst: 1, perSecond: 0 });
  for (let i = 0; i < 10_001; i++) limit.allows(String(i), 0);
  expect([limit.allows('10000', 0), limit.allows('0', 0)]).toEqual([false, true]);
});
