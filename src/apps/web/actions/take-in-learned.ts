import type { Body } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

/** What another bench has learned counts from now on, at that weight. */
export const takeInLearned = (body: Body<'learned-taken-in'>): Gesture => ({
  said: `${body.numbers.length} numbers that “${body.from}” has learned`,
  drafts: [{ kind: 'learned-taken-in', body }],
});
