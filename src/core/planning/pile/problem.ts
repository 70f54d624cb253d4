import { PlanningError } from '../planning-error.ts';
import { chanceAfter, worthLeft, type Assembly, type Pile, type PileModel, type Remedy } from './pile.ts';

/** A pile with names replaced by indices and what does not change computed once: what the search works on. */
export interface Problem {
  readonly pile: Pile;
  readonly models: readonly ModelData[];
  readonly units: readonly UnitData[];
  readonly things: readonly Thing[];
  readonly fills: readonly Fill[];
  readonly parts: readonly PartData[];
  readonly suppliers: readonly { readonly id: string; readonly postageMinor: number; readonly waitMinor: number }[];
  /** What a minute of work costs the person. */
  readonly minuteMinor: number;
}

export interface ModelData {
  readonly id: string;
  readonly slots: readonly string[];
  /** Indices of slots that make a unit original, and what that adds. */
  readonly original: readonly number[];
  readonly moreMinor: number;
  readonly buildMinutes: number;
  readonly soldMinor: number;
  readonly eachFurther: number;
  readonly priceSpread: number;
  /** By slot: worth of a working and of a failed assembly that is left over. */
  readonly leftWorks: Float64Array;
  readonly leftFailed: Float64Array;
  /** Of all slots together. */
  readonly leftTogether: number;
  /** By slot, the things that are or may come to lie in its pool, and what fills it. */
  readonly pools: readonly { readonly things: readonly number[]; readonly fills: readonly number[] }[];
  readonly units: readonly number[];
}

export interface UnitData {
  readonly id: string;
  readonly model: number;
  readonly things: readonly number[];
  readonly asIsMinor: number;
  readonly openMinutes: number;
  /** Things in the original slots; null where one of them is missing, so that it can never be original. */
  readonly pair: readonly number[] | null;
  /** Units with the same signature are alike in everything that counts. */
  readonly signature: string;
}

/** An assembly with what may be done to it; option 0 is to leave it. */
export interface Thing {
  readonly item: string;
  readonly assembly: Assembly;
  readonly model: number;
  readonly slot: number;
  /** Index of its unit, -1 when it lies loose. */
  readonly unit: number;
  readonly options: readonly Option[];
  readonly kind: string;
  /** Seed of its own luck, from its names, so that other things in the pile do not change it. */
  readonly luck: number;
}

export interface Option {
  readonly remedy: Remedy | null;
  readonly chance: number;
  readonly costMinor: number;
  readonly minutes: number;
  readonly variance: number;
  /** [part, count]; negative where the option gives parts. */
  readonly needs: readonly (readonly [number, number])[];
}

/** One way to fill a slot with a part from the drawer or a supplier. */
export interface Fill {
  readonly part: number;
  readonly model: number;
  readonly slot: number;
  readonly chance: number;
  readonly minutes: number;
  readonly luck: number;
}

export interface PartData {
  readonly id: string;
  readonly stock: number;
  readonly keptMinor: number;
  /** By supplier; null where it has none. */
  readonly offers: readonly ({ readonly unitMinor: number; readonly least: number } | null)[];
}

/** Throws `PlanningError` where names do not meet or numbers cannot be. */
export function problemOf(pile: Pile): Problem {
  const index = new Names(pile);
  const suppliers = pile.suppliers.filter(({ days }) => days <= pile.wishes.withinDays);
  const things: Thing[] = [];
  const units: UnitData[] = [];
  for (const item of pile.items) {
    if (item.keep) continue;
    const model = index.model(item.model);
    const own = item.assemblies.map((assembly) => thingOf(item.id, assembly, model, item.whole ? units.length : -1, index));
    const first = things.length;
    things.push(...own);
    if (!item.whole) continue;
    const at = own.map((_, i) => first + i);
    const original = pile.models[model]!.original.slots.map((slot) => index.slot(model, slot));
    const pair = original.map((slot) => own.findIndex((thing) => thing.slot === slot));
    const { asIsMinor, openMinutes } = item.whole;
    units.push({
      id: item.id,
      model,
      things: at,
      asIsMinor,
      openMinutes,
      pair: pair.length > 0 && !pair.includes(-1) ? pair.map((i) => first + i) : null,
      signature: [model, asIsMinor, openMinutes, ...own.map(({ kind }) => kind).sort()].join('|'),
    });
  }
  const fills = pile.parts.flatMap((part, p) =>
    part.fills.map(({ model, slot, chance, minutes }) => {
      const m = index.model(model);
      return { part: p, model: m, slot: index.slot(m, slot), chance, minutes, luck: hashText(`${part.id} in ${model} ${slot}`) };
    }),
  );
  const of = belonging(pile, things, fills, units);
  return {
    pile,
    things,
    units,
    fills,
    models: pile.models.map((model, m) => modelOf(model, m, index, of)),
    parts: pile.parts.map(({ id, stock, keptMinor }) => ({
      id,
      stock,
      keptMinor,
      offers: suppliers.map(({ offers }) => offers.find(({ part }) => part === id) ?? null),
    })),
    suppliers: suppliers.map(({ id, postageMinor, days }) => ({ id, postageMinor, waitMinor: days * pile.wishes.dayMinor })),
    minuteMinor: pile.wishes.hourMinor / 60,
  };
}

/** What the j-th finished unit of a model (from 1) adds over the leftovers that it is made of, before the premium for originality. */
export function gainOf({ soldMinor, eachFurther, buildMinutes, leftTogether }: ModelData, minuteMinor: number, j: number): number {
  return (eachFurther === 1 ? soldMinor : soldMinor * eachFurther ** (j - 1)) - buildMinutes * minuteMinor - leftTogether;
}

function thingOf(item: string, assembly: Assembly, model: number, unit: number, index: Names): Thing {
  const slot = index.slot(model, assembly.slot);
  const total = Object.values(assembly.faults).reduce((a, b) => a + b, 0);
  if (!(Math.abs(total - 1) < 1e-6))
    throw new PlanningError('bad-pile', `chances of ${assembly.slot} of ${item} add up to ${total}, not 1`);
  const options = [null, ...assembly.remedies].map((remedy) => optionOf(assembly, remedy, index));
  const kind = `${model}/${slot}/${options.map((o) => [o.chance, o.costMinor, o.minutes, o.variance, ...o.needs].join()).join(';')}`;
  return { item, assembly, model, slot, unit, options, kind, luck: hashText(`${item} ${assembly.slot}`) };
}

function optionOf(assembly: Assembly, remedy: Remedy | null, index: Names): Option {
  const { started } = assembly;
  const switching = started && started.remedy !== remedy?.id ? started.switchMinor : 0;
  const uses = Object.entries(remedy?.uses ?? {}).map(([part, n]) => [index.part(part), n] as const);
  const gives = Object.entries(remedy?.gives ?? {}).map(([part, n]) => [index.part(part), -n] as const);
  return {
    remedy,
    chance: chanceAfter(assembly, remedy),
    costMinor: (remedy?.costMinor ?? 0) + switching,
    minutes: remedy?.minutes ?? 0,
    variance: (remedy?.minutesSpread ?? 0) ** 2,
    needs: [...uses, ...gives],
  };
}

function modelOf(model: PileModel, m: number, index: Names, of: Belonging): ModelData {
  const leftWorks = Float64Array.from(model.slots, ({ works }) => worthLeft(works));
  return {
    id: model.id,
    slots: model.slots.map(({ id }) => id),
    original: model.original.slots.map((slot) => index.slot(m, slot)),
    moreMinor: model.original.slots.length > 0 ? model.original.moreMinor : 0,
    buildMinutes: model.buildMinutes,
    soldMinor: model.soldMinor,
    eachFurther: model.eachFurther,
    priceSpread: model.priceSpread,
    leftWorks,
    leftFailed: Float64Array.from(model.slots, ({ failed }) => worthLeft(failed)),
    leftTogether: leftWorks.reduce((a, b) => a + b, 0),
    pools: model.slots.map((_, s) => ({ things: of.things[m]![s]!, fills: of.fills[m]![s]! })),
    units: of.units[m]!,
  };
}

/** By model (and slot): the indices of what belongs there. */
interface Belonging {
  readonly things: readonly (readonly number[][])[];
  readonly fills: readonly (readonly number[][])[];
  readonly units: readonly number[][];
}

function belonging(pile: Pile, things: readonly Thing[], fills: readonly Fill[], units: readonly UnitData[]): Belonging {
  const bySlot = (): number[][][] => pile.models.map(({ slots }) => slots.map(() => []));
  const found = { things: bySlot(), fills: bySlot(), units: pile.models.map((): number[] => []) };
  things.forEach(({ model, slot }, t) => found.things[model]![slot]!.push(t));
  fills.forEach(({ model, slot }, f) => found.fills[model]![slot]!.push(f));
  units.forEach(({ model }, u) => found.units[model]!.push(u));
  return found;
}

class Names {
  private readonly models: ReadonlyMap<string, number>;
  private readonly parts: ReadonlyMap<string, number>;
  private readonly slots: readonly ReadonlyMap<string, number>[];

  constructor(pile: Pile) {
    const indexed = (all: readonly { readonly id: string }[]) => new Map(all.map(({ id }, i) => [id, i]));
    this.models = indexed(pile.models);
    this.parts = indexed(pile.parts);
    this.slots = pile.models.map(({ slots }) => indexed(slots));
  }

  model = (id: string): number => known(this.models.get(id), `model ${id}`);
  part = (id: string): number => known(this.parts.get(id), `part ${id}`);
  slot = (model: number, id: string): number => known(this.slots[model]!.get(id), `slot ${id}`);
}

function known(index: number | undefined, name: string): number {
  if (index === undefined) throw new PlanningError('bad-pile', `the pile names ${name} but does not hold it`);
  return index;
}

/** FNV-1a over the characters, 32 bits (Fowler, Noll, Vo; constants from memory). */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
