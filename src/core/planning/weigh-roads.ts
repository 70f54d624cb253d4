import { assertDistribution, meanOf, quantilesOf, type Outcome } from './outcomes.ts';
import { PlanningError } from './planning-error.ts';

/** One way to go on with a unit: how it may end, all money and minutes from here on counted in `outcomes`. */
export interface RoadOption<Road extends string> {
  readonly road: Road;
  readonly possible: boolean;
  readonly outcomes: readonly Outcome[];
  readonly minutes: number;
}

export interface RoadWorth<Road extends string> {
  readonly road: Road;
  /** Expected money, and the values that it stays below with one chance in ten and nine in ten. */
  readonly valueMinor: number;
  readonly lowMinor: number;
  readonly highMinor: number;
}

export interface WeighedRoads<Road extends string> {
  readonly best: Road;
  /** The next best possible road and how much less it brings; null when there is no other. */
  readonly next: { readonly road: Road; readonly lessMinor: number } | null;
  readonly worth: readonly RoadWorth<Road>[];
}

/**
 * The road with the greatest expected money among the possible ones; of equal ones that of fewer minutes, then the
 * earlier. A greedy rule: it looks at one unit alone. Throws `PlanningError` when no road is possible.
 */
export function weighRoads<Road extends string>(options: readonly RoadOption<Road>[]): WeighedRoads<Road> {
  const worth = options.map((option) => worthOf(option));
  const ranked = options
    .map((option, i) => ({ option, value: worth[i]!.valueMinor }))
    .filter(({ option }) => option.possible)
    .sort((a, b) => b.value - a.value || a.option.minutes - b.option.minutes);
  const [first, second] = ranked;
  if (!first) throw new PlanningError('no-possible-road', 'at least one road must be possible');
  const next = second ? { road: second.option.road, lessMinor: first.value - second.value } : null;
  return { best: first.option.road, next, worth };
}

function worthOf<Road extends string>({ road, outcomes }: RoadOption<Road>): RoadWorth<Road> {
  assertDistribution(outcomes);
  const [lowMinor, highMinor] = quantilesOf(outcomes, [0.1, 0.9]);
  return { road, valueMinor: meanOf(outcomes), lowMinor: lowMinor!, highMinor: highMinor! };
}
