import type { BoardCorners, BoardSide } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';

/** A photo of a known-good board that others are compared with. */
export interface Reference {
  /** By its hash, or `shipped` for that of the model itself. */
  readonly photo: string;
  readonly corners: BoardCorners | null;
}

/** More references than these cost more time than they spare looks. */
export const MOST_REFERENCES = 5;

/**
 * The references of one side of a model, the first of which gives the frame: one on which the corners of the board are known, if there is one; that of the model before
 * chosen ones, and newer before older.
 */
export function referencesOf(state: Readonly<BenchState>, model: Model, side: BoardSide): Reference[] {
  const told = (state.pictures.references.get(model.file.id) ?? []).filter((each) => each.side === side);
  const shipped = told.find(({ photo }) => photo === 'shipped');
  const own = (shipped?.use ?? true) ? model.photos.find((photo) => photo.side === side) : undefined;
  // The corners in a file are those on the photo beside it, not on one that the model was given since.
  const inFile = own && 'path' in own ? model.file.photo_corners?.find((each) => each.side === side)?.corners : undefined;
  const ownCorners = shipped?.corners ?? inFile ?? null;
  const chosen = told.filter(({ photo, use }) => use && photo !== 'shipped').toReversed();
  const all = [...(own ? [{ photo: 'shipped', corners: ownCorners }] : []), ...chosen.map(({ photo, corners }) => ({ photo, corners }))];
  return [...all.filter(({ corners }) => corners), ...all.filter(({ corners }) => !corners)].slice(0, MOST_REFERENCES);
}

/** Where a reference is looked at, at a size for the eye. */
export const referenceUrl = ({ photo }: Pick<Reference, 'photo'>, modelId: string, side: BoardSide): string =>
  photo === 'shipped' ? `/api/models/${encodeURIComponent(modelId)}/photos/${side}` : `/photos/${photo}/view`;
