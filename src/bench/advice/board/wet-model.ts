import type { HistoryEntry } from '../../state.ts';
import type { Model } from '../../models/index.ts';

const SIGNS: ReadonlySet<string> = new Set(['residue', 'corrosion']);

/** Areas of a unit's board in which residue or corrosion was seen, as they were drawn. */
export const wetAreas = (life: readonly HistoryEntry[]): NonNullable<Model['wet']> =>
  life.flatMap((entry) =>
    entry.kind === 'finding' && entry.region && SIGNS.has(entry.sees) ? [{ id: `wet-${entry.eventId.slice(-6)}`, ...entry.region }] : [],
  );

const made = new WeakMap<Model, Map<string, Model>>();

/** A model with such areas on its board: the same one for the same areas, so that what is computed of it is found again. */
export function wetModel(model: Model, wet: NonNullable<Model['wet']>): Model {
  if (wet.length === 0 || !model.circuit) return model;
  const known = made.get(model) ?? new Map<string, Model>();
  made.set(model, known);
  const key = JSON.stringify(wet);
  const same = known.get(key);
  if (same) return same;
  const soaked = { ...model, wet };
  known.set(key, soaked);
  return soaked;
}
