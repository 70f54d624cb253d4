import type { Model } from '../models/index.ts';
import type { BenchState, HistoryEntry, Item } from '../state.ts';
import type { TeachView } from '../views/index.ts';

type Reading = Extract<HistoryEntry, { kind: 'reading' }>;

/** Where such a unit stands, all steps of its proof were passed or signed off. */
const PROVED: ReadonlySet<Item['status']> = new Set(['proved', 'listed', 'kept']);

/**
 * What a unit can teach its model as a known-good board: the last reading at each point since the last work, as far as the model does not have it from this
 * unit already. Null where its model does not grow here, and for what is no unit.
 */
export function teachableFrom(state: Readonly<BenchState>, item: Item, model: Model | undefined): TeachView | null {
  const grown = state.grown.get(item.modelId);
  if (!grown || !model || item.kind !== 'unit') return null;
  const since = item.history.findLastIndex(({ kind }) => kind === 'remedy' || kind === 'slot');
  const readings = item.history.slice(since + 1).filter((entry): entry is Reading => entry.kind === 'reading');
  const fresh = model.file.points.flatMap((point) => {
    const last = readings.findLast((reading) => reading.point === point.id && reading.mode === point.mode);
    const known = last && grown.readings.findLast((taught) => taught.itemId === item.id && taught.point === point.id);
    if (!last || known?.value === last.value || (last.value === null && point.mode !== 'ohms' && point.mode !== 'diode')) return [];
    return [{ point: point.id, name: point.name, mode: point.mode, value: last.value }];
  });
  const isProved = PROVED.has(item.status) || (item.status === 'sold' && item.sale?.as === 'working' && item.proof.size > 0);
  return {
    board: `#${item.number} ${item.name}`.slice(0, MOST_LETTERS),
    revision: model.file.revision,
    is_proved: isProved,
    readings: fresh,
  };
}

const MOST_LETTERS = 60;
