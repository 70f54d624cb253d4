import type { SharedNumber } from '../events/index.ts';
import type { Model, Reference } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { learnedFaults } from './learned-faults.ts';
import { learnedPrices } from './learned-prices.ts';
import { learnedReadings } from './learned-readings.ts';
import { learnedRemedies } from './learned-remedies.ts';

/** All that this bench has learned of one model. */
export interface LearnedModel {
  readonly numbers: LearnedView['numbers'];
  /** What of it comes from this bench's own jobs, as it may be shared: nothing of money, names or days. */
  readonly own: readonly SharedNumber[];
  /** What good boards show, by point. */
  readonly references: ReadonlyMap<string, Reference>;
  /** Spread of the logarithm of prices; null where no sale is known. */
  readonly priceSpread: number | null;
}

/** Learns everything of a model, as it ships, from the whole bench. */
export function learnedModel(state: Readonly<BenchState>, model: Model): LearnedModel {
  const readings = learnedReadings(state, model);
  const prices = learnedPrices(state, model);
  const learned = [...learnedRemedies(state, model), ...learnedFaults(state, model), ...readings.flatMap(({ numbers }) => numbers)];
  return {
    numbers: [...learned.map(({ number }) => number), ...(prices?.numbers ?? [])],
    own: learned.flatMap(({ own }) => own ?? []),
    references: new Map(readings.map(({ point, reference }) => [point, reference])),
    priceSpread: prices?.spread ?? null,
  };
}
