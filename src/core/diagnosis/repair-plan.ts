import type { Belief } from './believe.ts';
import { minutesCost, openedTo } from './getting-there.ts';
import type { DeviceModel, Remedy, Stakes } from './model.ts';
import { remedyCost, remedyMinutes, TEST_MINUTES, Workshop } from './rank-remedies.ts';
import { afterRemedy } from './transitions.ts';

export interface RepairStep {
  readonly remedy: Remedy;
  /** Chance that the unit works after it, given that it did not before. */
  readonly chance: number;
  readonly costMinor: number;
  readonly minutes: number;
  /** Of the cost, what the parts are. */
  readonly partsMinor: number;
  /** Chance that the work ruins the unit. */
  readonly risk: number;
}

export interface RepairPlan {
  /** Remedies in the order in which to try them, each followed by a test; after the last one the unit is given up. */
  readonly steps: readonly RepairStep[];
  /** Chance that it ends as a working unit. */
  readonly chance: number;
  /** Expected spending on parts, and expected minutes. */
  readonly spendMinor: number;
  readonly minutes: number;
  /** Expected money from here on, minutes paid: what it brings when it works, or as it is when given up, less the cost on the way. */
  readonly expectedMinor: number;
  /** Every way in which it may end, with its money; the chances sum to 1. */
  readonly outcomes: readonly { readonly valueMinor: number; readonly chance: number }[];
  /** Number of steps after which going on is worth less than giving up. */
  readonly giveUpAfter: number;
}

/** Longest row of remedies that is thought through: past it the unit has swallowed more than it is worth. */
const MAX_STEPS = 8;
/** A remedy that helps less often than this is no step of a plan. */
const LEAST_PROGRESS = 0.004;
/** A unit that the work ruins brings this share of what it brought as it was; common practice, no source. */
const RUINED_SHARE = 0.5;

/**
 * The remedies to try one after another by chance per cost, the belief brought up to date after each failure, up to the point where giving up is worth
 * more (backward induction over the row). With one fault and independent remedies this is the optimal order (see orderByChancePerCost); with several
 * it is greedy. `model.remedies` are those that may be used.
 */
export function repairPlan(model: DeviceModel, belief: Belief, stakes: Stakes): RepairPlan {
  return planFrom(new Workshop(model, belief.space), belief.weights, stakes);
}

/** The same from bare weights, for the many beliefs that a choice of checks looks ahead to. */
export function planFrom(workshop: Workshop, weights: Float64Array, stakes: Stakes): RepairPlan {
  const { none } = workshop.space;
  const well = weights[none]!;
  const rolled = well > 1 - 1e-9 ? [] : rollOut(workshop, withoutNone(weights, none), stakes);
  const { giveUpAfter } = backward(rolled, stakes);
  const steps = rolled.slice(0, giveUpAfter);
  const testMinor = minutesCost(stakes, TEST_MINUTES);
  return { ...forward(steps, well, testMinor, stakes), steps, giveUpAfter };
}

function withoutNone(weights: Float64Array, none: number): Float64Array {
  const sick = weights.slice();
  sick[none] = 0;
  const sum = sick.reduce((a, b) => a + b, 0);
  return sum > 0 ? sick.map((w) => w / sum) : sick;
}

/** The greedy row: each step the remedy with most progress per cost, given that all before it failed. */
function rollOut(workshop: Workshop, start: Float64Array, stakesAtStart: Stakes): RepairStep[] {
  const { model, space } = workshop;
  const left = new Set(model.remedies.keys());
  const steps: RepairStep[] = [];
  let weights = start;
  let stakes = stakesAtStart;
  while (steps.length < MAX_STEPS) {
    const best = bestRemedy(workshop, weights, stakes, left);
    if (best === undefined) break;
    const remedy = model.remedies[best]!;
    const after = afterRemedy(space, weights, workshop.mends[best]!);
    const chance = Math.min(after[space.none]!, 1);
    steps.push({
      remedy,
      chance,
      costMinor: remedyCost(remedy, stakes),
      minutes: remedyMinutes(remedy, stakes),
      risk: remedy.risk,
      partsMinor: remedy.partsCostMinor,
    });
    if (chance > 1 - 1e-9) break;
    weights = withoutNone(after, space.none);
    stakes = openedTo(stakes, remedy.stage);
    left.delete(best);
  }
  return steps;
}

function bestRemedy(workshop: Workshop, weights: Float64Array, stakes: Stakes, left: ReadonlySet<number>): number | undefined {
  let best: number | undefined;
  let most = 0;
  for (const i of left) {
    const { progress } = workshop.effect(i, weights);
    const ratio = progress / Math.max(remedyCost(workshop.model.remedies[i]!, stakes), 1);
    if (progress >= LEAST_PROGRESS && ratio > most) [best, most] = [i, ratio];
  }
  return best;
}

/** How far along the row to go: the number of steps with the highest expected value, giving up allowed after each. */
function backward(steps: readonly RepairStep[], stakes: Stakes): { giveUpAfter: number } {
  let value = stakes.asIsMinor;
  let giveUpAfter = 0;
  for (let i = steps.length - 1; i >= 0; i--) {
    const { chance, costMinor, risk } = steps[i]!;
    const going = -costMinor + (1 - risk) * (chance * stakes.workingMinor + (1 - chance) * value) + risk * RUINED_SHARE * stakes.asIsMinor;
    if (going > stakes.asIsMinor) {
      if (value === stakes.asIsMinor) giveUpAfter = i + 1;
      value = going;
    } else {
      [value, giveUpAfter] = [stakes.asIsMinor, 0];
    }
  }
  return { giveUpAfter };
}

type Ends = Pick<RepairPlan, 'chance' | 'spendMinor' | 'minutes' | 'expectedMinor' | 'outcomes'>;

function forward(steps: readonly RepairStep[], well: number, testMinor: number, stakes: Stakes): Ends {
  const outcomes = [{ valueMinor: stakes.workingMinor - testMinor, chance: well }];
  let [reach, paid, working, spendMinor, minutes] = [1 - well, 0, well, 0, well * TEST_MINUTES];
  for (const { chance, costMinor, minutes: stepMinutes, risk, partsMinor } of steps) {
    paid += costMinor;
    spendMinor += reach * partsMinor;
    minutes += reach * stepMinutes;
    outcomes.push({ valueMinor: RUINED_SHARE * stakes.asIsMinor - paid, chance: reach * risk });
    outcomes.push({ valueMinor: stakes.workingMinor - paid, chance: reach * (1 - risk) * chance });
    working += reach * (1 - risk) * chance;
    reach *= (1 - risk) * (1 - chance);
  }
  outcomes.push({ valueMinor: stakes.asIsMinor - paid, chance: reach });
  const possible = outcomes.filter(({ chance }) => chance > 0);
  const expectedMinor = possible.reduce((sum, { valueMinor, chance }) => sum + valueMinor * chance, 0);
  return { chance: working, spendMinor, minutes, expectedMinor, outcomes: possible };
}
