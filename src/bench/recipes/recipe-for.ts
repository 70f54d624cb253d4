import { workTemperatures, type Alloy } from '../../core/rework/index.ts';
import type { ModelFile } from '../models/index.ts';
import { ASSEMBLIES } from './assemblies.ts';
import { CLEANING } from './cleaning.ts';
import { JOINTS } from './joints.ts';
import type { Action, Recipe } from './recipe.ts';

type Remedy = ModelFile['remedies'][number];

/** Every written recipe, by id. */
export const RECIPES: ReadonlyMap<string, Recipe> = new Map([...CLEANING, ...JOINTS, ...ASSEMBLIES].map((recipe) => [recipe.id, recipe]));

/** What is replaced or adjusted differs too much for one recipe: those name theirs. */
const OF_KIND: Readonly<Partial<Record<Remedy['kind'], string>>> = {
  clean: 'clean-contacts',
  reflow: 'refresh-joint',
  'bridge-with-wire': 'repair-track-wire',
};

/** Slots by what is usually in them. */
const OF_SLOT: readonly (readonly [RegExp, string])[] = [
  [/board/i, 'replace-board'],
  [/display|screen|light/i, 'replace-display'],
  [/lens|window/i, 'replace-lens'],
  [/shell|case|door/i, 'replace-shell'],
  [/speaker/i, 'replace-speaker'],
  [/batter|cell/i, 'replace-cell'],
  [/mechanism|drive|motor/i, 'replace-mechanism'],
];

/** The recipe of a remedy: the one it names, or that of its kind or slot; null where there is none. */
export function recipeFor(remedy: Pick<Remedy, 'kind' | 'slot' | 'recipe'>): Recipe | null {
  if (remedy.recipe !== undefined) return RECIPES.get(remedy.recipe) ?? null;
  if (remedy.kind !== 'transplant') return RECIPES.get(OF_KIND[remedy.kind] ?? '') ?? null;
  const found = OF_SLOT.find(([pattern]) => pattern.test(remedy.slot ?? ''));
  return found ? (RECIPES.get(found[1]) ?? null) : null;
}

/** °C from and to for an action with an alloy, rounded to 5; null for one without heat. */
export function heatFor(action: Action, alloy: Alloy): readonly [number, number] | null {
  if (!action.heat) return null;
  const { tipC, airC } = workTemperatures(alloy);
  const [low, high] = action.heat === 'air' ? airC : tipC;
  const middle = (low + high) / 2;
  const range = action.heat === 'tip-fine' ? [low, middle] : action.heat === 'tip-heavy' ? [middle, high] : [low, high];
  return [Math.round(range[0]! / 5) * 5, Math.round(range[1]! / 5) * 5];
}
