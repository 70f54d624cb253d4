import type { Belief } from './belief.ts';
import { bestOrder, MOST_ORDERED, type OrderedStep } from './best-order.ts';
import type { DeviceModel, Stakes } from './model.ts';
import { rankRemedies, type RankedRemedy } from './rank-remedies.ts';
import { bestRow, mendedWorth, ruinedWorth } from './repair-row.ts';
import { Workshop } from './workshop.ts';

/** A remedy with its chance that the unit works after it, given that the row gets to it and so the unit did not work before. */
export interface RepairStep extends Omit<RankedRemedy, 'ratio'> {
  /** Of the cost, what the parts are. */
  readonly partsMinor: number;
  /** Chance that the work ruins the unit. */
  readonly risk: number;
}

export interface RepairPlan {
  /** Remedies in the order in which to try them, each followed by a trial; after the last one the unit is given up. */
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

/**
 * The remedies of `model.remedies` to try one after another, the belief brought up to date after each failure, up to the point where going on is worth less than
 * `asIsMinor`. The eight with the most chance per cost are put in the order that brings most, exactly; a longer row by chance per cost is taken where it
 * brings more. That nothing is wrong shows before the first step and costs nothing. Work may ruin the unit, which then brings half of `asIsMinor`. Without
 * steps, and with no chance, when a block that a function needs is absent: its slot must be filled first.
 */
export function repairPlan(model: DeviceModel, belief: Belief, stakes: Stakes): RepairPlan {
  const workshop = Workshop.for(model, belief);
  const long = bestRow(workshop, belief.weights, stakes);
  const exact = workshop.complete ? orderedExactly(model, belief, stakes) : long;
  const { steps } = exact.expectedMinor > long.expectedMinor + LEAST_MORE ? exact : long;
  const well = workshop.complete ? belief.none : 0;
  return { steps: steps.map(shown), ...endsOf(steps, well, stakes), giveUpAfter: steps.length };
}

/** Two orders that bring the same but for this, in minor units, are the same. */
const LEAST_MORE = 1e-6;

function orderedExactly(model: DeviceModel, belief: Belief, stakes: Stakes): ReturnType<typeof bestOrder> {
  const { space, weights } = belief;
  const remedies = rankRemedies(model, belief, stakes).map(({ remedy }) => remedy);
  const sets = space.members
    .map((faults, s) => ({ faults: faults.map((fault) => model.faults[fault]!.id), chance: weights[s]! }))
    .filter((set, s) => s !== space.unknown && set.chance > 0);
  return bestOrder(sets, remedies.slice(0, MOST_ORDERED), stakes);
}

const shown = ({ remedy, chance, minutes, costMinor }: OrderedStep): RepairStep => ({
  remedy,
  chance: (1 - remedy.risk) * chance,
  minutes,
  costMinor,
  partsMinor: remedy.partsCostMinor,
  risk: remedy.risk,
});

type Ends = Pick<RepairPlan, 'chance' | 'spendMinor' | 'minutes' | 'expectedMinor' | 'outcomes'>;

function endsOf(steps: readonly OrderedStep[], well: number, stakes: Stakes): Ends {
  const outcomes = [{ valueMinor: mendedWorth(stakes), chance: well }];
  let [reach, paid, working, spendMinor, minutes] = [1 - well, 0, well, 0, 0];
  for (const { chance, costMinor, minutes: stepMinutes, remedy } of steps) {
    paid += costMinor;
    spendMinor += reach * remedy.partsCostMinor;
    minutes += reach * stepMinutes;
    const mended = reach * (1 - remedy.risk) * chance;
    outcomes.push(
      { valueMinor: ruinedWorth(stakes) - paid, chance: reach * remedy.risk },
      { valueMinor: mendedWorth(stakes) - paid, chance: mended },
    );
    working += mended;
    reach *= (1 - remedy.risk) * (1 - chance);
  }
  outcomes.push({ valueMinor: stakes.asIsMinor - paid, chance: reach });
  const possible = outcomes.filter(({ chance }) => chance > 0);
  const expectedMinor = possible.reduce((sum, { valueMinor, chance }) => sum + valueMinor * chance, 0);
  return { chance: Math.min(1, working), spendMinor, minutes, expectedMinor, outcomes: possible };
}
