import type { ItemRow } from '../../../bench/views/index.ts';
import type { EventTable, MetaName } from '../tables.ts';

/** The tables of the newest schema on PostgreSQL, as the query builder sees them. The schema itself is made by `migrations.ts`. */
export interface PostgresTables {
  readonly event: Omit<EventTable, 'seq'> & { readonly seq: number };
  readonly event_subject: { readonly item_id: string; readonly seq: number };
  readonly meta: { readonly name: MetaName; readonly value: number };
  readonly item_row: ItemRow & { readonly words: string };
  readonly item_count: { readonly status: string; readonly count: number };
  readonly schema_version: { readonly version: number };
}
