import type { Pattern } from '../../core/fit/index.ts';
import type { BadCell } from '../csv/csv-table.ts';

/** One part of a supplier's list. */
export interface ListedPart {
  readonly name: string;
  readonly supplier: string;
  /** As the list writes it. */
  readonly price: string;
  readonly pattern: Pattern;
}

export const OFFER_COLUMNS = ['supplier', 'price'] as const;

export const offerIn = (cells: Readonly<Record<(typeof OFFER_COLUMNS)[number], string>>): Pick<ListedPart, 'supplier' | 'price'> => ({
  supplier: cells.supplier.trim(),
  price: cells.price.trim(),
});

export const nameIn = (cell: string): string | BadCell =>
  cell.trim() === '' ? { field: 'part', message: 'is empty', next: 'Give each part a name.' } : cell.trim();
