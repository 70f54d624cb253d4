import type { Claim } from '../../../bench/events/index.ts';
import { claimDrafts, lotDraft } from './buy-lot.ts';
import type { Gesture } from './gesture.ts';

export interface UnitAnswer {
  readonly lotId: string;
  readonly itemId: string;
  readonly name: string;
  readonly modelId: string;
  readonly seller: string;
  readonly paidMinor: number;
  readonly currency: string;
  readonly claims: readonly Claim[];
  /** It lies on the bench already; else it is still on its way. */
  readonly here: boolean;
}

/** One unit with what was paid for it and what its seller says: a lot of one. */
export const addUnit = (unit: UnitAnswer): Gesture => ({
  said: `${unit.name} added`,
  drafts: [
    lotDraft({
      lotId: unit.lotId,
      title: unit.name,
      seller: unit.seller,
      priceMinor: unit.paidMinor,
      postageMinor: 0,
      taxMinor: 0,
      currency: unit.currency,
      rate: 1,
      modelId: unit.modelId,
      units: [{ itemId: unit.itemId, name: unit.name, expectedValueMinor: unit.paidMinor }],
      claims: unit.claims,
    }),
    ...claimDrafts(unit.itemId, unit.claims),
    ...(unit.here ? [{ kind: 'item-received', body: { item_id: unit.itemId } } as const] : []),
  ],
});
