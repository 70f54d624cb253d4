import type { LandPattern } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

export interface BagAnswer {
  readonly bagId: string;
  readonly part: string;
  readonly name: string;
  readonly count: number;
  readonly priceMinor: number;
  readonly currency: string;
  readonly place: string;
  /** Terminals of one of them, where they are known. */
  readonly pattern: LandPattern | null;
}

/** A bag of loose parts, bought and put in its place. */
export const buyBag = (bag: BagAnswer): Gesture => ({
  said: `${bag.count} × ${bag.name}`,
  drafts: [
    {
      kind: 'part-bought',
      body: {
        bag_id: bag.bagId,
        part: bag.part,
        name: bag.name,
        count: bag.count,
        price_minor: bag.priceMinor,
        currency: bag.currency,
        place: bag.place,
        ...(bag.pattern === null ? {} : { pattern: bag.pattern }),
      },
    },
  ],
});
