import { expect, it } from 'vitest';
import { isNews, sawUpTo } from './seen-seq.ts';

it('counts as news only what lies beyond what the page has seen, and that once', () => {
  sawUpTo(40);
  expect(isNews(40)).toBe(false);
  expect(isNews(42)).toBe(true);
  expect(isNews(42)).toBe(false);
  sawUpTo(7);
  expect(isNews(41)).toBe(false);
  expect(isNews(43)).toBe(true);
});
