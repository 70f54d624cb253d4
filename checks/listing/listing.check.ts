import { describe, expect, test } from 'vitest';
import { HELD_BACK } from './held-back.ts';
import { ONCE_HELD_BACK } from './once-held-back.ts';
import { score } from './score.ts';
import { TUNED } from './tuned.ts';

/** Written by us: see SOURCE.md. */

describe('listings read into claims', () => {
  test.each([
    ['tuned', TUNED, 60],
    ['once held back', ONCE_HELD_BACK, 60],
  ] as const)('every sentence of the set that was %s gives exactly the claims expected', (_name, sentences, least) => {
    expect(sentences.length).toBeGreaterThan(least);
    expect(score(sentences).wrong).toEqual([]);
  });

  test('of the set that is held back as many come out right as were measured, and few claims are read that nobody made', () => {
    const { right, of, hits, extra } = score(HELD_BACK);
    expect(of).toBeGreaterThanOrEqual(30);
    expect(right).toBeGreaterThanOrEqual(20);
    expect(hits / (hits + extra)).toBeGreaterThanOrEqual(0.85);
  });

  test('no sentence is in two sets', () => {
    const texts = [...TUNED, ...ONCE_HELD_BACK, ...HELD_BACK].map(([text]) => text);
    expect(new Set(texts).size).toBe(texts.length);
  });
});
