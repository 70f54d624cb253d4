import { moneyText } from '../money.ts';
import type { ListingTextView } from '../../../bench/views/index.ts';

/** The text, then what is still missing for it and what to mind. */
export function listingLines(view: ListingTextView): string[] {
  const { own_claims: claims, photos_missing: missing, weight_g: weight } = view;
  return [
    ...view.text.split('\n'),
    '',
    ...(claims.length > 0
      ? [`Your own words say ${claims.map((words) => `"${words}"`).join(', ')} of every unit, whatever is on file of it.`]
      : []),
    `Photos: ${view.photos.length}${missing.length > 0 ? `, none yet of: ${missing.join(', ')}` : ''}.`,
    weight
      ? `Post: about ${weight.unit} g, some ${weight.packed} g packed, ${moneyText(view.postage_minor, view.currency)}; weigh the parcel.`
      : 'Post: weigh the parcel.',
    ...view.cautions,
  ];
}
