import type { Sale } from '../../core/market/index.ts';
import { salesOf } from '../market/sales-of.ts';
import { dayNumber } from '../market/day-number.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { hasLeft } from './attribution.ts';
import { learnHonesty, type Honesty } from './honesty.ts';
import { learnedModel } from './learned-model.ts';
import { withLearned } from './with-learned.ts';

/** What all advice goes by: models with this bench's own numbers, and what its sellers' claims are worth. */
export interface KnownHere {
  readonly models: ReadonlyMap<string, Model>;
  readonly honesty: Honesty;
}

/**
 * Puts models together as they are known at this bench. A model is made anew only when something that it is learned from has changed, or a day has
 * passed over it: else it is the same object, so that what was thought with it is found again.
 */
export function learner(shipped: ReadonlyMap<string, Model>): (state: Readonly<BenchState>) => KnownHere {
  const kept = new Map<string, Kept>();
  return (state) => {
    const jobs = jobsByModel(state);
    const known = [...shipped].map(([id, model]) => [id, asKnown(state, model, jobs.get(id) ?? '', kept)] as const);
    return { models: new KnownModels(known, shipped), honesty: learnHonesty(state) };
  };
}

/** Older versions of models that grow here are found by their keys as they were, and not listed. */
class KnownModels extends Map<string, Model> {
  constructor(
    known: readonly (readonly [string, Model])[],
    readonly shipped: ReadonlyMap<string, Model>,
  ) {
    super(known);
  }

  override get(key: string): Model | undefined {
    return super.get(key) ?? this.shipped.get(key);
  }
}

interface Kept {
  readonly key: string;
  readonly sales: readonly Sale[];
  /** The numbers, written out. */
  readonly written: string;
  readonly model: Model;
  /** How often it was looked at anew: the next one is named by it. */
  readonly times: number;
}

function asKnown(state: Readonly<BenchState>, model: Model, jobs: string, kept: Map<string, Kept>): Model {
  const { id } = model.file;
  const sales = salesOf(state, model);
  const { resets, halfLifeDays, takenIn } = state.learning;
  const others = takenIn.filter(({ model_id }) => model_id === id);
  if (jobs === '' && sales.length === 0 && others.length === 0) return model;
  const key = JSON.stringify([
    model.version ?? null,
    jobs,
    halfLifeDays,
    [...resets],
    dayNumber(state.newestAt),
    others.map(({ eventId }) => eventId),
  ]);
  const before = kept.get(id);
  if (before?.key === key && alike(before.sales, sales)) return before.model;
  const learned = learnedModel(state, model);
  const written = JSON.stringify([
    model.version ?? null,
    learned.numbers.map(({ about, id: name, mean }) => [about, name, mean]),
    [...learned.references],
    learned.priceSpread,
  ]);
  const made = before?.written === written ? before.model : withLearned(model, learned, String((before?.times ?? 0) + 1));
  kept.set(id, { key, sales, written, model: made, times: (before?.times ?? 0) + 1 });
  return made;
}

/** By model the items that are off the bench, each with its last change; others teach nothing. */
function jobsByModel(state: Readonly<BenchState>): ReadonlyMap<string, string> {
  const jobs = new Map<string, string[]>();
  for (const item of state.items.values()) {
    if (!hasLeft(item)) continue;
    const own = jobs.get(item.modelId) ?? [];
    own.push(`${item.id}@${item.changedSeq}`);
    jobs.set(item.modelId, own);
  }
  return new Map([...jobs].map(([id, own]) => [id, own.join(' ')]));
}

const alike = (one: readonly Sale[], other: readonly Sale[]): boolean =>
  one.length === other.length &&
  one.every((sale, i) => {
    const { id, day, priceMinor, condition, complete, original } = other[i]!;
    return (
      sale.id === id &&
      sale.day === day &&
      sale.priceMinor === priceMinor &&
      sale.condition === condition &&
      sale.complete === complete &&
      sale.original === original
    );
  });
