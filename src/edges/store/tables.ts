import type { Generated } from 'kysely';
import type { ItemRow } from '../../bench/views/index.ts';

/** The tables of the newest schema, as the query builder sees them. The schema itself is made by `migrations/`. */
export interface Tables {
  readonly event: EventTable;
  readonly meta: { readonly name: MetaName; readonly value: number };
  readonly item_row: ItemRow & { readonly rank: number };
  readonly item_word: { readonly rowid: number; readonly words: string; readonly item_word: string };
  readonly item_count: { readonly status: string; readonly count: number };
}

export interface EventTable {
  readonly seq: Generated<number>;
  readonly id: string;
  readonly at: string;
  readonly device: string;
  readonly kind: string;
  readonly version: number;
  /** Schema version of the code that checked the body; 0 where no code has understood it yet. */
  readonly checked_version: number;
  /** JSON, as it came. */
  readonly body: string;
}

export type MetaName = 'rows_seq' | 'rows_version';
