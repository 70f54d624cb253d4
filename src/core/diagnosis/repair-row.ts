import { openedTo } from './getting-there.ts';
import type { Remedy, Stakes } from './model.ts';
import { remedyCost, remedyMinutes, type Workshop } from './workshop.ts';

/** One remedy in a row of attempts, each followed by a trial. */
export interface RowStep {
  readonly index: number;
  readonly remedy: Remedy;
  /** Chance that the unit works after it, given that it did not before; ruin excluded. */
  readonly chance: number;
  readonly costMinor: number;
  readonly minutes: number;
  /** Chance that it helps per minor unit, when it is its turn. */
  readonly ratio: number;
}

/** Remedies in order, to be tried while the unit does not work, and what to expect of it. */
export interface Row {
  readonly steps: readonly RowStep[];
  /** Expected money of a unit that works as it is, is mended on the way, or is given up after the last step. */
  readonly expectedMinor: number;
}

/** Longest row of remedies that is thought through. */
const MAX_STEPS = 10;
/** A remedy that helps less often than this is no step. */
const LEAST_PROGRESS = 0.004;
/** A unit that the work ruins brings this share of what it brought as it was; common practice, no source. */
const RUINED_SHARE = 0.5;

export const mendedWorth = (stakes: Stakes): number => Math.max(stakes.workingMinor, stakes.asIsMinor);
export const ruinedWorth = (stakes: Stakes): number => RUINED_SHARE * stakes.asIsMinor;

/**
 * The row of most chance per cost, each remedy at most once, the belief brought up to date after each failure, cut where
 * going on is worth less than giving up (backward induction over the row). Weights sum to 1. With one fault and independent
 * remedies the order is optimal (see orderByChancePerCost); with several it is greedy.
 */
export function bestRow(workshop: Workshop, weights: Float64Array, stakes: Stakes): Row {
  const well = workshop.complete ? weights[workshop.space.none]! : 0;
  const rolled = workshop.complete && well < 1 - 1e-9 ? rollOut(workshop, weights, stakes) : [];
  let ahead = stakes.asIsMinor;
  let last = 0;
  for (let i = rolled.length - 1; i >= 0; i--) {
    const { chance, costMinor, remedy } = rolled[i]!;
    const going = (1 - remedy.risk) * (chance * mendedWorth(stakes) + (1 - chance) * ahead) + remedy.risk * ruinedWorth(stakes) - costMinor;
    if (going > stakes.asIsMinor) {
      if (last <= i) last = i + 1;
      ahead = going;
    } else [ahead, last] = [stakes.asIsMinor, 0];
  }
  return { steps: rolled.slice(0, last), expectedMinor: well * mendedWorth(stakes) + (1 - well) * ahead };
}

function rollOut(workshop: Workshop, start: Float64Array, atStart: Stakes): RowStep[] {
  const weights = start.slice();
  let alive = 1 - weights[workshop.space.none]!;
  weights[workshop.space.none] = 0;
  let stakes = atStart;
  const left = new Set(workshop.model.remedies.keys());
  const steps: RowStep[] = [];
  while (steps.length < MAX_STEPS && alive > 1e-9) {
    const step = bestStep(workshop, weights, alive, stakes, left);
    if (!step) break;
    steps.push(step);
    workshop.fail(step.index, weights);
    alive *= 1 - step.chance;
    stakes = openedTo(stakes, step.remedy.stage);
    left.delete(step.index);
  }
  return steps;
}

function bestStep(workshop: Workshop, weights: Float64Array, alive: number, stakes: Stakes, left: ReadonlySet<number>): RowStep | null {
  let best: { index: number; cured: number; ratio: number } | null = null;
  for (const index of left) {
    const remedy = workshop.model.remedies[index]!;
    const { cured, progress } = workshop.gain(index, weights);
    if (progress < LEAST_PROGRESS * alive) continue;
    const ratio = ((1 - remedy.risk) * progress) / alive / Math.max(remedyCost(remedy, stakes), 1);
    if (!best || ratio > best.ratio) best = { index, cured, ratio };
  }
  if (!best) return null;
  const remedy = workshop.model.remedies[best.index]!;
  const cost = { costMinor: remedyCost(remedy, stakes), minutes: remedyMinutes(remedy, stakes) };
  return { index: best.index, remedy, chance: Math.min(1, best.cured / alive), ratio: best.ratio, ...cost };
}

/** What following these steps to the end brings, by state; the mean over any belief is what the row is worth under that belief. */
export function worthByState(workshop: Workshop, steps: readonly RowStep[], atStart: Stakes): Float64Array {
  const { size, none } = workshop.space;
  const values = new Float64Array(size).fill(atStart.asIsMinor);
  const cureValue = mendedWorth(atStart);
  const costs: number[] = [];
  let stakes = atStart;
  for (const { remedy } of steps) {
    costs.push(remedyCost(remedy, stakes));
    stakes = openedTo(stakes, remedy.stage);
  }
  for (let i = steps.length - 1; i >= 0; i--) {
    const { index, remedy } = steps[i]!;
    workshop.valueBefore(index, values, cureValue);
    const lost = remedy.risk * ruinedWorth(atStart) - costs[i]!;
    for (let s = 0; s < size; s++) values[s] = (1 - remedy.risk) * values[s]! + lost;
  }
  if (workshop.complete) values[none] = cureValue;
  return values;
}
