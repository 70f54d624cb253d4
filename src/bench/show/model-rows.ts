import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { ModelRow } from '../views/index.ts';

/** One line a model: how much is known of it, and how many units of it the bench has had. */
export function modelRows(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): ModelRow[] {
  const units = new Map<string, number>();
  for (const item of state.items.values()) {
    if (item.kind === 'unit') units.set(item.modelId, (units.get(item.modelId) ?? 0) + 1);
  }
  return [...models.values()].map((model) => {
    const referenced = new Set(model.readings.map((reading) => reading.point));
    return {
      id: model.file.id,
      name: model.file.name,
      revision: model.file.revision,
      level: model.file.level,
      about: model.file.about,
      version: model.version ?? null,
      units: units.get(model.file.id) ?? 0,
      points: model.file.points.length,
      referenced_points: model.file.points.filter((point) => referenced.has(point.id)).length,
    };
  });
}
