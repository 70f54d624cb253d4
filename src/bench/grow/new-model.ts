import type { Body } from '../events/index.ts';

/** What a new model is begun from, with the photos that there are of its board. */
export interface NewModel {
  readonly name: string;
  readonly revision: string;
  readonly currency: string;
  readonly from: Body<'model-begun'>['from'];
  /** Hashes of photos that the bench keeps. */
  readonly photos: { readonly front?: string; readonly back?: string };
}

export type NewModelDraft =
  | { readonly kind: 'model-begun'; readonly body: Body<'model-begun'> }
  | { readonly kind: 'model-photo-set'; readonly body: Pick<Body<'model-photo-set'>, 'model_id' | 'side' | 'photo'> };

/** The events that begin a model of that id. */
export function newModelDrafts(id: string, { name, revision, currency, from, photos }: NewModel): NewModelDraft[] {
  const begun = { kind: 'model-begun' as const, body: { model_id: id, name, revision, currency, from } };
  const sides = (['front', 'back'] as const).flatMap((side) => {
    const photo = photos[side];
    return photo === undefined ? [] : [{ kind: 'model-photo-set' as const, body: { model_id: id, side, photo } }];
  });
  return [begun, ...sides];
}

const LONGEST = 48;
/** The page for a new model has this name. */
const NO_ID = 'new';

/** An id from a name, "Corrie CP-4" as "corrie-cp-4", with a number behind it where that is taken. */
export function modelIdFor(name: string, taken: (id: string) => boolean): string {
  const plain = name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, LONGEST);
  const id = plain === '' ? 'model' : plain;
  if (id !== NO_ID && !taken(id)) return id;
  for (let number = 2; ; number++) if (!taken(`${id}-${number}`)) return `${id}-${number}`;
}
