import type { Bench } from '../../../bench/bench.ts';
import type { Model } from '../../../bench/models/index.ts';
import { randomStream } from '../../../core/numeric/index.ts';
import { sayBooks, sayTruth } from './closed-books.ts';
import { HiddenTruth } from './hidden-truth.ts';
import { scout } from './scout.ts';
import type { SeededClock } from './seeded-clock.ts';
import { workOnUnit } from './work-on-unit.ts';
import { note, type Workplace } from './workplace.ts';

export interface WalkParts {
  /** An empty bench whose clock is the one below. */
  readonly bench: Bench;
  readonly models: ReadonlyMap<string, Model>;
  readonly clock: SeededClock;
  readonly seed: string;
  readonly say: (line: string) => void;
}

/**
 * The whole path on an empty bench: listings are weighed, some bought, each unit worked on as the advice says, sold or
 * given up, and the books shown. What is wrong with each unit is drawn by the seed and hidden from the bench, so the
 * walk differs from seed to seed and nothing of it is written beforehand.
 */
export function walk({ bench, models, clock, seed, say }: WalkParts): void {
  const random = randomStream(`walk ${seed}`);
  const place: Workplace = { bench, models, clock, random, say, truth: new HiddenTruth(random) };
  note(place, 'bench-set', { name: 'A walk', currency: 'GBP', hour_value_minor: 1200, fee_percent: 11, postage_out_minor: 420 });
  say(`A walk from listings to closed books, seed ${seed}. An hour at the bench counts ${(1200 / 100).toFixed(2)} GBP.`);
  const units = scout(place);
  const wrongWith = new Map(
    units.map((id) => [
      id,
      place.truth
        .flawsOf(id)
        .map((flaw) => flaw.name)
        .join(' and '),
    ]),
  );
  for (const id of units) workOnUnit(place, id);
  sayTruth(place, wrongWith);
  sayBooks(place);
}
