import { expect, it } from 'vitest';
import { Memo } from './memo.ts';

it('answers a known question without asking again, and forgets the older half when full', () => {
  const memo = new Memo<number>(4);
  let asked = 0;
  const ask = (question: string) => memo.get(question, () => ++asked);
  ['a', 'b', 'c', 'd', 'a'].forEach(ask);
  expect(asked).toBe(4);
  ask('e');
  expect([ask('d'), ask('a')]).toEqual([4, 6]);
});
