import type { PictureReference } from '../state.ts';
import { onItem, type Apply } from './fold.ts';

/** A photo is a reference from now on, or not any more; what was said of its corners stays until others are given. */
export const referenceSet: Apply<'reference-set'> = ({ state }, { body, id }) => {
  const { model_id: modelId, side, photo, use, corners } = body;
  const before = state.pictures.references.get(modelId) ?? [];
  const isSame = (each: PictureReference): boolean => each.side === side && each.photo === photo;
  const known = before.find(isSame);
  const next: PictureReference = { side, photo, use, corners: corners ?? known?.corners ?? null, eventId: id };
  state.pictures.references.set(modelId, known ? before.map((each) => (isSame(each) ? next : each)) : [...before, next]);
  return null;
};

/** What was said of a difference before, on the same photo with the same outline, is replaced. */
export const differenceJudged: Apply<'difference-judged'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { pictures } = fold.state;
    const outline = JSON.stringify(event.body.outline);
    pictures.judged = pictures.judged.filter((each) => each.photo !== event.body.photo || JSON.stringify(each.outline) !== outline);
    pictures.judged.push({ ...event.body, modelId: item.modelId, eventId: event.id });
  });
