import { tableOn } from '../../core/market/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { dayNumber } from './day-number.ts';

/** A box with padding. Common practice, no source. */
const PACKING_G = 150;

/** What one of a model weighs packed, g; null where the model does not say what it weighs. */
export const packedG = ({ file }: Model): number | null => (file.weight_g === undefined ? null : file.weight_g + PACKING_G);

/**
 * What it costs to send one of a model: by the person's own table that holds now, where there is one and the parcel is not too heavy for it; else what sending one usually costs
 * this bench.
 */
export function postageOf({ postage, settings, newestAt }: Readonly<BenchState>, model: Model): number {
  const weight = packedG(model);
  const tables = postage.map((row) => ({ ...row, fromDay: dayNumber(row.fromDay) }));
  const table = weight === null ? undefined : tableOn(tables, newestAt === '' ? 0 : dayNumber(newestAt));
  return table?.bands.find(({ upToG }) => weight! <= upToG)?.priceMinor ?? settings.postageOutMinor;
}
