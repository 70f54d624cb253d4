import type { FactSection, FactSource } from '../events/index.ts';
import type { ToldPlace } from '../views/index.ts';

/** Where a place of a model comes from, and whose word it is; the author is empty for this bench. */
export interface PlaceSource {
  readonly source: FactSource;
  readonly author: string;
}

export const placeKey = (section: FactSection, id: string, field: string | null): string => `${section} ${id} ${field ?? ''}`;

const INHERITED: PlaceSource = { source: 'inherited', author: '' };

/** Of each place of a model's file where it comes from: the last word on the field, else on the entry; what nobody spoke of is inherited. */
export function sourceOfPlaces(places: readonly ToldPlace[]): (section: FactSection, id: string, field?: string) => PlaceSource {
  const known = new Map(places.map((place) => [placeKey(place.section, place.id, place.field), place]));
  const ofEntry = (section: FactSection, id: string): PlaceSource | undefined =>
    known.get(placeKey(section, id, null)) ?? places.findLast((place) => place.section === section && place.id === id);
  return (section, id, field) => {
    const found =
      field === undefined ? ofEntry(section, id) : (known.get(placeKey(section, id, field)) ?? known.get(placeKey(section, id, null)));
    return found ? { source: found.source, author: found.author } : INHERITED;
  };
}
