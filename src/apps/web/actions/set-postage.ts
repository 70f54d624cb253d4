import type { Gesture } from './gesture.ts';

export interface PostageBand {
  readonly upToG: number;
  readonly priceMinor: number;
}

/** What a parcel costs to send by its weight, from a day on; lighter bands first, whatever the order in which they were typed. */
export const setPostage = (fromDay: string, bands: readonly PostageBand[]): Gesture => ({
  said: 'a table of postage',
  drafts: [
    {
      kind: 'postage-set',
      body: {
        from_day: fromDay,
        bands: bands.toSorted((a, b) => a.upToG - b.upToG).map(({ upToG, priceMinor }) => ({ up_to_g: upToG, price_minor: priceMinor })),
      },
    },
  ],
});
