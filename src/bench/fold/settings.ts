import type { Apply } from './fold.ts';
import { missing } from './fold.ts';

/** Only what the event names is set. The currency stays once money was booked in it. */
export const benchSet: Apply<'bench-set'> = ({ state }, { body }) => {
  const settings = state.settings;
  if (body.name !== undefined) settings.name = body.name;
  if (body.hour_value_minor !== undefined) settings.hourValueMinor = body.hour_value_minor;
  if (body.fee_percent !== undefined) settings.feePercent = body.fee_percent;
  if (body.postage_out_minor !== undefined) settings.postageOutMinor = body.postage_out_minor;
  if (body.currency === undefined || body.currency === settings.currency) return null;
  if (state.journal.length > 0) return missing('books without money in another currency than', body.currency);
  settings.currency = body.currency;
  return null;
};
