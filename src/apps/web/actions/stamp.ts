import type { Draft } from './gesture.ts';

export interface StampTools {
  readonly newId: () => string;
  readonly now: () => Date;
  readonly device: string;
}

export type StampedEvent = Draft & { readonly id: string; readonly at: string; readonly device: string; readonly version: 1 };

/** The drafts as events of schema version 1, in order, all at one time. Made once per gesture, so that sending it again is safe. */
export function stamp(drafts: readonly Draft[], tools: StampTools): StampedEvent[] {
  const at = tools.now().toISOString();
  return drafts.map((draft) => ({ ...draft, id: tools.newId(), at, device: tools.device, version: 1 }));
}
