import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { FitsSeenView } from '../views/fits.ts';

type Line = FitsSeenView['slots'][number]['lines'][number];
const TRIED = { fits: 'fits', bent: 'bent', 'does-not-fit': 'fails' } as const;

/**
 * Which assemblies of other models and which parts go into each slot of a model, those that went in most often first: what its file says, what was noted, and the
 * assemblies of other models that sit in units of it now. What failed stands last.
 */
export function fitsSeen(state: Readonly<BenchState>, model: Model, nameOf: (modelId: string) => string): FitsSeenView {
  const { id, slots } = model.file;
  return {
    model_id: id,
    slots: slots.map(({ id: slot, name, fits }) => {
      const lines = new Map<string, Line>();
      const line = (modelId: string | null, part: string): Line => {
        const key = modelId === null ? `part ${part.toLowerCase()}` : `model ${modelId}`;
        const made = lines.get(key) ?? {
          model_id: modelId,
          name: modelId === null ? part : nameOf(modelId),
          said: false,
          fits: 0,
          bent: 0,
          fails: 0,
        };
        lines.set(key, made);
        return made;
      };
      for (const other of fits) line(other, '').said = true;
      for (const { otherModelId, part, outcome } of state.grown.get(id)?.fits.filter((each) => each.slot === slot) ?? [])
        line(otherModelId, part ?? '')[TRIED[outcome]] += 1;
      for (const { modelId } of strangersIn(state, id, slot)) line(modelId, '').fits += 1;
      return { slot, name, lines: [...lines.values()].sort(mostFirst) };
    }),
  };
}

/** Assemblies of other models that sit in this slot of units of the model. */
function strangersIn({ items }: Readonly<BenchState>, modelId: string, slot: string): Item[] {
  return [...items.values()]
    .filter((item) => item.kind === 'unit' && item.modelId === modelId)
    .flatMap((unit) => items.get(unit.slots.get(slot) ?? '') ?? [])
    .filter((assembly) => assembly.modelId !== modelId);
}

const score = ({ said, fits, bent, fails }: Line): number => fits + bent - fails + (said ? 0.5 : 0);
const mostFirst = (a: Line, b: Line): number => score(b) - score(a) || (a.name < b.name ? -1 : 1);
