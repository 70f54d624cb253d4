import { formatMinor } from '../../core/quantity/index.ts';
import { csvText } from '../csv/csv-text.ts';
import type { ComparedListing } from '../views/index.ts';

export const COMPARED_COLUMNS = [
  'rank',
  'title',
  'seller',
  'model',
  'count',
  'asks',
  'worth',
  'profit',
  'profit_per_hour',
  'minutes',
  'claims',
  'closes_at',
] as const;

/** The table of compared listings as text, amounts in the currency of the bench, in the order in which they are given. */
export const comparedCsv = (listings: readonly ComparedListing[], currency: string): string =>
  csvText(
    COMPARED_COLUMNS,
    listings.map((each, i) => [
      i + 1,
      each.title,
      each.seller,
      each.model_id,
      each.count,
      ...[each.asks_minor, each.worth_minor, each.profit_minor].map((minor) => formatMinor(minor, currency)),
      each.per_hour_minor === null ? null : formatMinor(each.per_hour_minor, currency),
      each.minutes,
      each.claims.join('; '),
      each.closes_at,
    ]),
  );
