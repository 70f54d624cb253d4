import type { z } from 'zod';
import type { BODIES } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

/** Hours, money and risk of the plan, and what a lot must bring. */
export const setPlan = (wishes: z.input<(typeof BODIES)['plan-set']>): Gesture => ({
  said: 'wishes for the plan',
  drafts: [{ kind: 'plan-set', body: wishes }],
});

/** What a supplier sells, and what an order there costs. Without offers it is forgotten. */
export const setSupplier = (supplier: z.input<(typeof BODIES)['supplier-set']>): Gesture => ({
  said: supplier.offers.length === 0 ? `${supplier.supplier} is forgotten` : `supplier ${supplier.supplier}`,
  drafts: [{ kind: 'supplier-set', body: supplier }],
});
