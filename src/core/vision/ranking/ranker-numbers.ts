import type { Ranker } from '../difference/profile.ts';

/** Written by `npm run train:vision`, not by hand. */
export const RANKERS: Readonly<Record<'bare' | 'photo', Ranker>> = {
  bare: { real: { start: 0, trees: [] }, kinds: {} },
  photo: { real: { start: 0, trees: [] }, kinds: {} },
};
