import type { Gesture } from './gesture.ts';

export interface FeeAnswer {
  readonly place: string;
  readonly fromDay: string;
  readonly percent: number;
  /** Price up to which that share holds, and the share beyond it; null for one share of the whole price. */
  readonly beyond: { readonly upToMinor: number; readonly percent: number } | null;
  readonly fixedMinor: number;
  readonly capMinor: number | null;
}

/** What a place takes of a price from a day on. */
export const setFees = ({ place, fromDay, percent, beyond, fixedMinor, capMinor }: FeeAnswer): Gesture => ({
  said: `fees at ${place}`,
  drafts: [
    {
      kind: 'fees-set',
      body: {
        place,
        from_day: fromDay,
        bands: beyond ? [{ up_to_minor: beyond.upToMinor, percent }, { percent: beyond.percent }] : [{ percent }],
        fixed_minor: fixedMinor,
        cap_minor: capMinor,
      },
    },
  ],
});
