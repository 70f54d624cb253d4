import { expect, it } from 'vitest';
import { systemClock } from './clock.ts';

it('gives ids that sort in the order of their making, of UUID version 7', () => {
  const clock = systemClock();
  const ids = Array.from({ length: 5000 }, () => clock.newId());
  expect([...new Set(ids)].sort()).toEqual(ids);
  expect(ids.every((id) => /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id))).toBe(true);
});
