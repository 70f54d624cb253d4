import { itemKnown, modelKnown } from './known.ts';
import { nearest } from './nearest.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

/** The photo is one of a unit of that model and side, or the model has one of its own for that side. */
export const referenceSet: Rule<'reference-set'> = (context, { body }) =>
  firstOf(
    () => modelKnown(context, body.model_id, 'body.model_id'),
    () => (body.photo === 'shipped' ? shippedPhoto(context, body.model_id, body.side) : photoOfModel(context, body.model_id, body.photo)),
  );

function shippedPhoto({ models }: RuleContext, modelId: string, side: string): Objection | null {
  const { photos, file } = models.get(modelId)!;
  if (photos.some((photo) => photo.side === side)) return null;
  return refuse('unknown-photo', 'body.photo', `${file.name} comes with no photo of its ${side}`);
}

function photoOfModel({ state }: RuleContext, modelId: string, hash: string): Objection | null {
  const here = [...state.items.values()].some((item) => item.modelId === modelId && item.photos.some((photo) => photo.hash === hash));
  return here ? null : refuse('unknown-photo', 'body.photo', `no unit of ${modelId} has a photo ${hash.slice(0, 12)}`);
}

/** The photo is one of the item's. */
export const differenceJudged: Rule<'difference-judged'> = (context, { body }) =>
  firstOf(
    () => itemKnown(context, body.item_id),
    () => {
      const { photos, name } = context.state.items.get(body.item_id)!;
      if (photos.some(({ hash }) => hash === body.photo)) return null;
      const short = (hash: string): string => hash.slice(0, 12);
      const there =
        photos.length === 0
          ? 'it has none'
          : `there are ${nearest(
              short(body.photo),
              photos.map(({ hash }) => short(hash)),
            )}`;
      return refuse('unknown-photo', 'body.photo', `${name} has no photo ${short(body.photo)}; ${there}`);
    },
  );
