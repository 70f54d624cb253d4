import type { Model } from '../models/index.ts';
import { homeOf, slotContent } from '../slots.ts';
import type { BenchState, Item } from '../state.ts';
import type { Beliefs, Judged } from './beliefs.ts';
import { lower, slotName } from './say.ts';
import { slotWell } from './well-chance.ts';

/** Where a working assembly may come from. */
export interface Donor {
  readonly itemId: string;
  readonly name: string;
  /** That the assembly is well. */
  readonly chance: number;
  /** What is used up: its value alone times that chance. */
  readonly valueMinor: number;
  readonly fromUnit: boolean;
  /** Number of the unit that a loose assembly first came out of; null for one bought by itself, and for a unit. */
  readonly cameOutOf: number | null;
  /** Chances of the faults that it brings, in the words of the model that it goes into. */
  readonly faults: Readonly<Record<string, number>>;
}

/** A donor less likely to be well than this is no donor. Common practice, no source. */
const LEAST_WELL = 0.3;

/** Finds donors on one state of the bench. `isHopeless` says of a unit that, taken alone, it is worth more in parts. */
export class Donors {
  readonly #state: Readonly<BenchState>;
  readonly #beliefs: Beliefs;
  readonly #isHopeless: (unit: Item) => boolean;
  #drawer: readonly Item[] | null = null;
  #units: readonly Item[] | null = null;

  constructor(beliefs: Beliefs, isHopeless: (unit: Item) => boolean) {
    this.#state = beliefs.state;
    this.#beliefs = beliefs;
    this.#isHopeless = isHopeless;
  }

  /** For one slot of a unit of this model, most worth having first; `except` are items that may not be used. */
  for(model: Model, slot: string, except: ReadonlySet<string>): Donor[] {
    const spec = model.file.slots.find((candidate) => candidate.id === slot);
    if (!spec) return [];
    const fits = (item: Item): boolean => !except.has(item.id) && (item.modelId === model.file.id || spec.fits.includes(item.modelId));
    const loose = this.#loose(slot).filter(fits);
    const units = this.#unfinished()
      .filter(fits)
      .filter((unit) => this.#hasSlot(unit, slot) && this.#isHopeless(unit));
    return [...loose, ...units]
      .flatMap((item) => this.#donor(item, model, slot, spec.value))
      .sort((a, b) => b.chance - a.chance || Number(a.fromUnit) - Number(b.fromUnit));
  }

  #donor(item: Item, model: Model, slot: string, valueMinor: number): Donor[] {
    const judged = this.#beliefs.of(item);
    if (!judged) return [];
    const chance = slotWell(judged, slot);
    if (chance < LEAST_WELL) return [];
    const faults = this.#beliefs.broughtBy(judged, model, slot);
    const fromUnit = item.kind === 'unit';
    const cameOutOf = fromUnit ? null : (this.#state.items.get(homeOf(item) ?? '')?.number ?? null);
    return [{ itemId: item.id, name: item.name, chance, valueMinor: valueMinor * chance, fromUnit, cameOutOf, faults }];
  }

  #hasSlot(unit: Item, slot: string): boolean {
    return slotContent(unit, slot, this.#state.items, this.#beliefs.models.get(unit.modelId)).holds !== 'nothing';
  }

  #loose(slot: string): readonly Item[] {
    this.#drawer ??= [...this.#state.items.values()].filter((item) => item.kind === 'assembly' && item.status === 'in-the-drawer');
    return this.#drawer.filter((item) => item.slot === slot);
  }

  #unfinished(): readonly Item[] {
    this.#units ??= [...this.#state.items.values()].filter((item) => item.kind === 'unit' && item.status === 'on-the-bench');
    return this.#units;
  }
}

/** Whether swapping what is in a slot could help: chance of a fault in it. */
export const slotTrouble = (judged: Judged, slot: string): number => 1 - slotWell(judged, slot);

/** Remedies of the model that change the assembly of a slot for another. */
export const swapRemedy = (model: Model, slot: string): Model['file']['remedies'][number] | undefined =>
  model.file.remedies.find((remedy) => remedy.kind === 'transplant' && remedy.slot === slot);

/** What a donor gives, in the middle of a sentence: "the shell that came out of #3", "the shell of Grey Tern", `"Spare shell" from the drawer`. */
export function donorWords(model: Model, slot: string, { name, fromUnit, cameOutOf }: Donor): string {
  const what = `the ${lower(slotName(model, slot))}`;
  if (fromUnit) return `${what} of ${name}`;
  return cameOutOf === null ? `"${name}" from the drawer` : `${what} that came out of #${cameOutOf}`;
}
