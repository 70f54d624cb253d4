import type { LandPattern } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

interface BagChange {
  readonly place?: string;
  /** Terminals of one of its parts; null takes them away. */
  readonly pattern?: LandPattern | null;
}

/** Another place, or other terminals, of a bag. */
export const setBag = (bagId: string, name: string, change: BagChange): Gesture => ({
  said: change.pattern === undefined ? `${name} lies in ${change.place || 'no place'}` : `terminals of ${name}`,
  drafts: [{ kind: 'bag-set', body: { bag_id: bagId, ...change } }],
});
