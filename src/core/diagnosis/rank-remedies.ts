import type { Belief } from './believe.ts';
import { minutesCost, openingMinutes } from './getting-there.ts';
import type { DeviceModel, Remedy, Stakes } from './model.ts';
import type { StateSpace } from './state-space.ts';
import { mendsByFault } from './transitions.ts';

/** To try the unit after a remedy; common practice, no source. */
export const TEST_MINUTES = 2;

export interface RankedRemedy {
  readonly remedy: Remedy;
  /** Chance that nothing is wrong any more after it. */
  readonly chance: number;
  /** The work, the way to get at it, and the test after it. */
  readonly minutes: number;
  /** Those minutes and the parts. */
  readonly costMinor: number;
  /** Progress per minor unit: the chance that it helps, where half of a pair counts half. */
  readonly ratio: number;
}

/** Remedies by what they bring per cost, best first; those that can remove nothing that is believed in are left out. */
export function rankRemedies(model: DeviceModel, belief: Belief, stakes: Stakes): RankedRemedy[] {
  const workshop = new Workshop(model, belief.space);
  return model.remedies
    .map((remedy, i) => {
      const { cured, progress } = workshop.effect(i, belief.weights);
      const costMinor = remedyCost(remedy, stakes);
      return {
        remedy,
        chance: belief.none + cured,
        minutes: remedyMinutes(remedy, stakes),
        costMinor,
        ratio: progress / Math.max(costMinor, 1),
      };
    })
    .filter(({ ratio }) => ratio > 0)
    .sort((a, b) => b.ratio - a.ratio);
}

/** Minor units for a remedy with the test after it. */
export function remedyCost(remedy: Remedy, stakes: Stakes): number {
  return minutesCost(stakes, remedyMinutes(remedy, stakes)) + remedy.partsCostMinor;
}

export const remedyMinutes = (remedy: Remedy, stakes: Stakes): number =>
  remedy.minutes + openingMinutes(stakes, remedy.stage) + TEST_MINUTES;

/** What each remedy of a model does to each state, computed once for many beliefs. */
export class Workshop {
  readonly mends: readonly Float64Array[];
  /** Chance by state that the remedy leaves nothing, and the share of the faults that it removes. */
  private readonly cures: readonly Float64Array[];
  private readonly removes: readonly Float64Array[];

  constructor(
    readonly model: DeviceModel,
    readonly space: StateSpace,
  ) {
    this.mends = model.remedies.map((remedy) => mendsByFault(model, remedy));
    this.cures = this.mends.map((mends) => byState(space, (faults) => faults.reduce((p, fault) => p * mends[fault]!, 1)));
    this.removes = this.mends.map((mends) =>
      byState(space, (faults) => faults.reduce((sum, fault) => sum + mends[fault]!, 0) / faults.length),
    );
  }

  /** Chance that the remedy cures a unit that is not well, and its expected progress; both over the whole belief. */
  effect(remedy: number, weights: Float64Array): { cured: number; progress: number } {
    const [cures, removes] = [this.cures[remedy]!, this.removes[remedy]!];
    let [cured, progress] = [0, 0];
    for (let state = 0; state < weights.length; state++) {
      cured += weights[state]! * cures[state]!;
      progress += weights[state]! * removes[state]!;
    }
    return { cured, progress };
  }
}

const byState = (space: StateSpace, of: (faults: readonly number[]) => number): Float64Array =>
  Float64Array.from(space.members, (faults) => (faults.length === 0 ? 0 : of(faults)));
