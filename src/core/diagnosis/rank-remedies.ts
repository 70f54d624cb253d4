import type { Belief } from './belief.ts';
import type { DeviceModel, Remedy, Stakes } from './model.ts';
import { remedyCost, remedyMinutes, Workshop } from './workshop.ts';

export interface RankedRemedy {
  readonly remedy: Remedy;
  /** Chance that the unit works after it. */
  readonly chance: number;
  /** With the way to get at it and the trial after it. */
  readonly minutes: number;
  /** Those minutes and the parts. */
  readonly costMinor: number;
  /** Chance that it helps per minor unit; where it can mend one fault of two, half of that counts. */
  readonly ratio: number;
}

/**
 * Remedies by chance per cost, best first. What counts for the order is that it helps, so that with two faults to mend the
 * first step has worth, too; the chance is that nothing is wrong any more and the work has not ruined it. Remedies that can
 * mend nothing that is believed in are left out.
 */
export function rankRemedies(model: DeviceModel, belief: Belief, stakes: Stakes): RankedRemedy[] {
  const workshop = Workshop.for(model, belief);
  return model.remedies
    .map((remedy, i) => {
      const { cured, progress } = workshop.gain(i, belief.weights);
      const costMinor = remedyCost(remedy, stakes);
      const safe = 1 - remedy.risk;
      const chance = workshop.complete ? Math.min(1, safe * (belief.none + cured)) : 0;
      return { remedy, chance, minutes: remedyMinutes(remedy, stakes), costMinor, ratio: (safe * progress) / Math.max(costMinor, 1) };
    })
    .filter(({ ratio }) => ratio > 0)
    .sort((a, b) => b.ratio - a.ratio);
}
