import type { MarketView } from '../../../bench/views/index.ts';

/** The grades of the bench in words. */
export const CONDITION_WORDS: Readonly<Record<MarketView['prices'][number]['condition'], string>> = {
  A: 'A, like new',
  B: 'B, good',
  C: 'C, worn',
  D: 'D, works',
  parts: 'For parts',
};

export type Condition = keyof typeof CONDITION_WORDS;
export const CONDITIONS = Object.keys(CONDITION_WORDS) as readonly Condition[];
