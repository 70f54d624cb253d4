import { expect, it } from 'vitest';
import { isNews, isWriting, sawUpTo, whileWriting } from './seen-seq.ts';

it('counts as news only what lies beyond what the page has seen, and that once', () => {
  sawUpTo(40);
  expect(isNews(40)).toBe(false);
  expect(isNews(42)).toBe(true);
  expect(isNews(42)).toBe(false);
  sawUpTo(7);
  expect(isNews(41)).toBe(false);
  expect(isNews(43)).toBe(true);
});

it('knows that a batch of the page is on its way until it has arrived or failed', async () => {
  const both = [whileWriting(() => Promise.resolve(1)), whileWriting(() => Promise.reject(new Error('the bench is away')))] as const;
  expect(isWriting()).toBe(true);
  await expect(both[0]).resolves.toBe(1);
  await expect(both[1]).rejects.toThrow('away');
  expect(isWriting()).toBe(false);
});
