import type { Gesture } from './gesture.ts';

/** After how many days a job counts half; null for never. */
export const setLearning = (halfLifeDays: number | null): Gesture => ({
  said: halfLifeDays === null ? 'jobs do not fade' : `a job counts half after ${halfLifeDays} days`,
  drafts: [{ kind: 'learning-set', body: { half_life_days: halfLifeDays } }],
});

/** A learned number begins anew. */
export const resetLearned = (about: string, name: string): Gesture => ({
  said: `${name}: learned anew from now on`,
  drafts: [{ kind: 'learned-reset', body: { about } }],
});
