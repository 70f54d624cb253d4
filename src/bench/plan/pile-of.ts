import type { Override, Pile, PileItem, PilePart } from '../../core/planning/index.ts';
import { chanceAfter } from '../../core/planning/index.ts';
import type { Judged } from '../advice/beliefs.ts';
import type { Desk } from '../advice/desk.ts';
import type { Model } from '../models/index.ts';
import type { Item, PlanChoice } from '../state.ts';
import { planLoose, planUnit } from './plan-items.ts';
import { planModel } from './plan-model.ts';
import { partsUsed, planParts, planSuppliers } from './plan-suppliers.ts';
import { coreWishes, limitsOf, planWishes, type PlanWishes } from './plan-wishes.ts';

/** The pile of a bench as numbers, with what is needed to speak of it. */
export interface PlannedPile {
  readonly pile: Pile;
  readonly judged: ReadonlyMap<string, Judged>;
  readonly wishes: PlanWishes;
  /** What the person decided, as far as it still can be done. */
  readonly overrides: readonly Override[];
  /** Units that are open on the bench. */
  readonly inHand: ReadonlySet<string>;
}

const IN_WORK: ReadonlySet<string> = new Set(['bought', 'on-the-bench']);

/** Everything owned and unfinished: units under work and assemblies in the drawer. */
export function pileOf(desk: Desk): PlannedPile {
  const { state, models } = desk;
  const things = [...state.items.values()].filter((item) =>
    item.kind === 'unit' ? IN_WORK.has(item.status) : item.status === 'in-the-drawer',
  );
  const judged = new Map(things.flatMap((item) => pairOf(item, desk.beliefs.of(item))));
  const items = things.flatMap((item) => {
    const own = judged.get(item.id);
    return own
      ? [kept(item.kind === 'unit' ? planUnit(desk, item, own) : planLoose(desk, item, own), state.planning.choices.get(item.id))]
      : [];
  });
  const used = [...new Set(items.map(({ model }) => model))].flatMap((id) => models.get(id) ?? []);
  const wishes = planWishes(state);
  return {
    pile: {
      ...stockOf(desk, [...used, ...new Set([...judged.values()].map(({ model }) => model))], items),
      models: used.map((model) => planModel(state, model)),
      items,
      limits: limitsOf(wishes),
      wishes: coreWishes(wishes, state.settings.hourValueMinor),
    },
    judged,
    wishes,
    overrides: items.flatMap((item) => overridesOf(item, state.planning.choices.get(item.id) ?? [])),
    inHand: new Set(things.filter(({ stage }) => stage !== 'closed').map(({ id }) => id)),
  };
}

const pairOf = (item: Item, judged: Judged | null): [string, Judged][] => (judged ? [[item.id, judged]] : []);

const kept = (item: PileItem, choices: readonly PlanChoice[] | undefined): PileItem =>
  choices?.some(({ does }) => does === 'keep') ? { ...item, keep: true } : item;

/** Parts and suppliers for these items; new assemblies fill slots that are empty in some unit. */
export function stockOf(desk: Desk, models: readonly Model[], items: readonly PileItem[]): Pick<Pile, 'parts' | 'suppliers'> {
  const fills = fillsOf(models, items);
  const names = new Set([...partsUsed(items.flatMap(({ assemblies }) => assemblies.flatMap(({ remedies }) => remedies))), ...fills.keys()]);
  const suppliers = planSuppliers(desk.state, models, names);
  const parts = planParts(desk.state, names, suppliers).map((part) => ({ ...part, fills: fills.get(part.id) ?? [] }));
  return { parts, suppliers };
}

/** By part: the empty slots that a new one of it fills, from the remedies that put a bought assembly in. */
function fillsOf(models: readonly Model[], items: readonly PileItem[]): ReadonlyMap<string, PilePart['fills']> {
  const fills = new Map<string, PilePart['fills'][number][]>();
  for (const { file } of new Map(models.map((model) => [model.file.id, model])).values()) {
    const units = items.filter(({ model, whole }) => model === file.id && whole);
    for (const { kind, slot, parts, mends, minutes, risk } of file.remedies) {
      const [only] = parts;
      if (kind !== 'transplant' || slot === undefined || parts.length !== 1 || only!.count !== 1) continue;
      if (units.every(({ assemblies }) => assemblies.some((each) => each.slot === slot))) continue;
      const chance = Math.max(0, ...Object.values(mends)) * (1 - risk);
      fills.set(only!.part, [...(fills.get(only!.part) ?? []), { model: file.id, slot, chance, minutes }]);
    }
  }
  return fills;
}

/** Choices that the pile as it is now still knows. */
function overridesOf(item: PileItem, choices: readonly PlanChoice[]): Override[] {
  if (item.keep) return [];
  return choices.flatMap(({ does, slot, remedy }): Override[] => {
    if (does === 'open' || does === 'as-is') return item.whole ? [{ item: item.id, does }] : [];
    const assembly = item.assemblies.find((each) => each.slot === slot);
    const known = remedy === null || assembly?.remedies.some(({ id }) => id === remedy);
    return assembly && known ? [{ item: item.id, slot, remedy }] : [];
  });
}

/** Chance that what sits in a slot works after what the plan does with it. */
export function slotChance(item: PileItem, slot: string, remedy: string | undefined): number {
  const assembly = item.assemblies.find((each) => each.slot === slot);
  return assembly ? chanceAfter(assembly, assembly.remedies.find(({ id }) => id === remedy) ?? null) : 0;
}
