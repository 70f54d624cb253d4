import type { Claim } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

/** What words of listings mean from now on; null: nothing any more. */
export const teachWords = (words: string, claim: Claim | null): Gesture => ({
  said: claim === null ? `“${words}” means nothing any more` : `what “${words}” means`,
  drafts: [{ kind: 'words-taught', body: { words, claim } }],
});
