import type { PileItem } from '../../core/planning/index.ts';
import { lower, remedyName, upper } from '../advice/say.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { Made } from './planner.ts';
import { FIND_FIRST, planSlots } from './plan-slots.ts';

/** The names of what a plan speaks of. */
export interface PlanNames {
  /** "#3 Blue Tern". */
  item(id: string): string;
  slot(modelId: string, slot: string): string;
  /** "Clean the contacts, then fit a new fuse". */
  treatment(itemId: string, remedy: string | null): string;
  part(id: string): string;
  model(id: string): string;
  minutesOf(itemId: string, slot: string, remedy: string): number;
}

export function planNames(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>, { from }: Pick<Made, 'from'>): PlanNames {
  const items = new Map(from.pile.items.map((item) => [item.id, item]));
  const steps = (itemId: string, remedy: string): string[] => {
    const judged = from.judged.get(itemId);
    return remedy.split('+').map((step) => (judged ? remedyName(judged.model, step) : step));
  };
  return {
    item: (id) => {
      const item = state.items.get(id);
      return item ? `#${item.number} ${item.name}` : id;
    },
    slot: (modelId, slot) => slotsOf(models, modelId).find(({ id }) => id === slot)?.name ?? slot,
    treatment: (itemId, remedy) => {
      if (remedy === null) return 'Leave it as it is';
      if (remedy === FIND_FIRST) return 'Find the trouble first, then mend what it is';
      const [first, ...then] = steps(itemId, remedy);
      return upper([first!, ...then.map((step) => `then ${lower(step)}`)].join(', '));
    },
    part: (id) => partName(state, [...models.values()], id),
    model: (id) => models.get(id)?.file.name ?? id,
    minutesOf: (itemId, slot, remedy) => minutesIn(items.get(itemId), slot, remedy),
  };
}

const slotsOf = (models: ReadonlyMap<string, Model>, modelId: string) => {
  const model = models.get(modelId);
  return model ? planSlots(model.file) : [];
};

/** As a model calls a part, or the bag that holds it. */
export function partName({ bags }: Pick<BenchState, 'bags'>, models: readonly Model[], id: string): string {
  const known = models.flatMap(({ file }) => file.parts).find((part) => part.id === id);
  return known?.name ?? [...bags.values()].find(({ part }) => part === id)?.name ?? id;
}

const minutesIn = (item: PileItem | undefined, slot: string, remedy: string): number =>
  item?.assemblies.find((each) => each.slot === slot)?.remedies.find(({ id }) => id === remedy)?.minutes ?? 0;
