import type { z } from 'zod';
import type { BODIES } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

/** What holds for the whole bench: its name, currency, the worth of an hour, usual fee and postage. */
export const setBench = (settings: z.input<(typeof BODIES)['bench-set']>): Gesture => ({
  said: 'settings of the bench',
  drafts: [{ kind: 'bench-set', body: settings }],
});
