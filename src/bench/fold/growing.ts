import type { Body, GrowingKind, SharedFact } from '../events/index.ts';
import { beginModel, type GrownModel, type Told } from '../grow/grown-model.ts';
import { withFact, withTakenIn } from '../grow/grow-model.ts';
import { versionKey } from '../grow/model-key.ts';
import type { Item } from '../state.ts';
import type { Apply, Fold, Missing } from './fold.ts';
import { missing, onItem, touch } from './fold.ts';

export const modelBegun: Apply<'model-begun'> = (fold, event) => {
  const { grown } = fold.state;
  const { model_id: id, from } = event.body;
  if (grown.has(id)) return missing('free name', id);
  const copied = 'copy_of' in from && !fold.shelf.has(from.copy_of) ? (grown.get(from.copy_of) ?? null) : null;
  grown.set(id, beginModel(event.body, toldBy(event), copied));
  return null;
};

/** Any kind of event that adds one fact. The item that it was seen on, if it was one, has it in its log. */
export function grows<K extends GrowingKind>(kind: K): Apply<K> {
  return (fold, event) => {
    const fact = { kind, body: event.body, author: '' } as SharedFact;
    const { model_id: id } = event.body as Body<GrowingKind>;
    const itemId = 'item_id' in event.body ? event.body.item_id : undefined;
    const item = fold.state.items.get(itemId ?? '');
    if (itemId !== undefined && !item) return missing('item', itemId);
    const lack = change(fold, id, (grown) => withFact(grown, fact, toldBy(event)));
    if (item && !lack) touch(fold, item, event.at);
    return lack;
  };
}

export const modelTakenIn: Apply<'model-taken-in'> = (fold, event) =>
  change(fold, event.body.model_id, (grown) => withTakenIn(grown, event.body, toldBy(event)));

/** From now on the newest version counts for it, as it is now. */
export const modelJudgedAgain: Apply<'model-judged-again'> = (fold, event) => onItem(fold, event, (item) => keepVersion(fold, item));

/** What left is judged with the version of its model at that time, whatever is learned of the model later. */
export function keepVersion({ state }: Fold, item: Item): void {
  const grown = state.grown.get(item.modelId);
  if (!grown) return;
  item.modelVersion = grown.version;
  state.grownThen.set(versionKey(grown.id, grown.version), grown);
}

function change({ state }: Fold, id: string, grow: (grown: GrownModel) => GrownModel): Missing | null {
  const grown = state.grown.get(id);
  if (!grown) return missing('model that grows here called', id);
  state.grown.set(id, { ...grow(grown), version: grown.version + 1 });
  return null;
}

const toldBy = ({ id, at }: { readonly id: string; readonly at: string }): Told => ({ eventId: id, at, author: '' });
