import type { Gesture } from './gesture.ts';

/** The demo leaves every list; the log keeps it, so that Undo brings it back. */
export const putDemoAway = (): Gesture => ({ said: 'the demo is put away', drafts: [{ kind: 'demo-put-away', body: {} }] });
