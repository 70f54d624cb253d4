import type { z } from 'zod';
import type { BODIES } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

type Chosen = z.input<(typeof BODIES)['plan-chosen']>;

/** Decides for an item otherwise than planned; `said` are the words of it. */
export const choose = (body: Chosen, said: string): Gesture => ({ said, drafts: [{ kind: 'plan-chosen', body }] });

/** Takes every decision on an item back. */
export const chooseAsPlanned = (itemId: string, name: string): Gesture =>
  choose({ item_id: itemId, does: 'as-planned' }, `${name}: as planned`);
