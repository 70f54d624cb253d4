import { askWith } from './ask.ts';

export interface StoredAnswer {
  readonly stored: readonly { readonly id: string; readonly seq: number; readonly duplicate: boolean }[];
}

/** Stores a batch, all or nothing. Sending the same events again is safe: they carry their ids. */
export const postEvents = (events: readonly unknown[]): Promise<StoredAnswer> => askWith<StoredAnswer>('/api/events', { events });
