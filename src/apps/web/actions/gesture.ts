import type { z } from 'zod';
import type { BODIES, Kind } from '../../../bench/events/index.ts';

/** An event before it has its id, time and device. */
export type Draft = { [K in Kind]: { readonly kind: K; readonly body: z.input<(typeof BODIES)[K]> } }[Kind];

/** What one tap or one form records, and the words for it: "Noted: " goes before. */
export interface Gesture {
  readonly said: string;
  readonly drafts: readonly Draft[];
}
