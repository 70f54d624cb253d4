import type { Advisor } from '../advice/index.ts';
import { moneyOf } from '../books/index.ts';
import { teachableFrom } from '../grow/teachable.ts';
import { modelKey } from '../grow/model-key.ts';
import type { LiveLog } from '../live/live-log.ts';
import { logLine } from '../log-line.ts';
import { logWords } from '../log-words.ts';
import type { Model } from '../models/index.ts';
import { rowOf } from '../row-of.ts';
import { slotContent } from '../slots.ts';
import type { BenchState, Item, TestResult } from '../state.ts';
import type { ItemFile, ItemHistory, TestView } from '../views/index.ts';

/** An item by its id, or by its stock number written "#7" or "7"; null when there is none. */
export function findItem(state: Readonly<BenchState>, name: string): Item | null {
  const byId = state.items.get(name);
  if (byId) return byId;
  const number = /^#?(\d{1,9})$/.exec(name.trim())?.[1];
  if (number === undefined) return null;
  for (const item of state.items.values()) if (item.number === Number(number)) return item;
  return null;
}

/** Everything of one item: what is known, what to do next, what was done, and its money. */
export function itemFile(live: LiveLog, advisor: Advisor, item: Item): ItemFile {
  const { state, models } = live;
  const model = models.get(modelKey(item));
  const { place } = logWords(state, models);
  return {
    ...historyOf(live, item),
    model: {
      id: item.modelId,
      name: model?.file.name ?? item.modelId,
      level: model?.file.level ?? 0,
      version: model?.version ?? null,
      newest_version: models.get(item.modelId)?.version ?? null,
    },
    stage: item.stage,
    slots: item.kind === 'unit' ? slotLines(state, item, model) : [],
    photos: item.photos.map((photo) => ({ hash: photo.hash, side: photo.side, caption: photo.caption, event_id: photo.eventId })),
    findings: item.history.flatMap((entry) =>
      entry.kind === 'finding'
        ? [
            {
              place: entry.place,
              name: place(item.id, entry.place),
              sees: entry.sees,
              event_id: entry.eventId,
              region: entry.region ?? null,
            },
          ]
        : [],
    ),
    ...advisor.fileParts(state, item.id),
    money: moneyOf(state, item),
    tests: item.tests.map(testView),
    sound_reference: newestKnownGood(state, item, 'sound'),
    colour_reference: newestKnownGood(state, item, 'colour'),
    grade: item.grade,
    teach: teachableFrom(state, item, models.get(item.modelId)),
    seq: state.seq,
  };
}

/** What of the file of an item is read off its log, without any thought. */
export const historyOf = ({ state, models, byItem }: LiveLog, item: Item): ItemHistory => ({
  row: rowOf(state, item),
  log: (byItem.get(item.id) ?? []).map((stored) => logLine(stored, state, models)),
});

const testView = ({ test, verdict, text, values, knownGood, beforeWork, eventId, at }: TestResult): TestView => ({
  test,
  verdict,
  text,
  values,
  known_good: knownGood,
  before_work: beforeWork,
  at,
  event_id: eventId,
});

/** The newest test of any unit of the model, itself too, that was known to be well. */
function newestKnownGood(state: Readonly<BenchState>, { modelId }: Item, name: TestResult['test']): TestView | null {
  const known = [...state.items.values()].flatMap((each) =>
    each.modelId === modelId ? each.tests.filter((test) => test.test === name && test.knownGood) : [],
  );
  const newest = known.toSorted((a, b) => (a.at < b.at ? 1 : -1))[0];
  return newest ? testView(newest) : null;
}

/** The slots of the model, and those that the log knows of besides. */
function slotLines(state: Readonly<BenchState>, unit: Item, model: Model | undefined): ItemFile['slots'] {
  const named = new Map(model?.file.slots.map((slot) => [slot.id, slot.name]));
  return [...new Set([...named.keys(), ...unit.slots.keys()])].map((slot) => {
    const content = slotContent(unit, slot, state.items, model);
    const name = named.get(slot) ?? slot;
    const inside = state.items.get(content.itemId ?? '');
    return {
      slot,
      name,
      holds: content.holds,
      item_id: content.itemId,
      item_name: inside?.name ?? (content.holds === 'nothing' ? '' : name),
    };
  });
}
