import type { RepairPlan } from '../../core/diagnosis/index.ts';
import type { DeviceModel, Stakes } from '../../core/diagnosis/model.ts';
import { spreadAbove, surely } from '../../core/planning/index.ts';
import { bestRepair, type BestRepair } from './best-repair.ts';
import type { Judged } from './beliefs.ts';
import type { Knowing, Telling } from './knowing.ts';
import type { Prices } from './prices.ts';
import type { RoadOption } from './road-option.ts';
import { minutesText, money, percent, remedyName } from './say.ts';
import { nothingWrong } from './well-chance.ts';

/** Mending the unit by itself: how, and what it is worth. */
export interface RepairRoad {
  readonly option: RoadOption;
  readonly plan: RepairPlan;
  /** The trouble has to be found before anything is tried. */
  readonly lookFirst: boolean;
}

/** `unproved` are steps of proof that failed for good: with any, mending is over. */
export function repairRoad(
  judged: Judged,
  alone: DeviceModel,
  stakes: Stakes,
  prices: Prices,
  telling: Telling,
  unproved: readonly string[],
): RepairRoad {
  const best = bestRepair(judged.model, alone, judged.belief, stakes, telling);
  const { lookFirst, plan, chance, minutes, spendMinor } = best;
  const possible = best.possible && unproved.length === 0;
  const outcomes = possible ? spreadAbove(best.outcomes, stakes.asIsMinor, prices.workingMinor, prices.spread) : surely(0);
  const why = possible ? whyRepair(judged, best, stakes, prices) : [unproved.length > 0 ? NOT_PROVED : whyNot(judged)];
  return { option: { road: 'repair', possible, outcomes, chance, minutes, spendMinor, why }, plan, lookFirst };
}

const NOT_PROVED = 'A step of its proof failed, and every remedy was tried or declined, or the step was put aside.';

const whyNot = ({ belief }: Judged): string =>
  belief.absent.size > 0
    ? 'A slot of it is empty, so mending the rest does not make it work.'
    : 'Neither a remedy nor finding the trouble first is worth its minutes on what is believed now.';

function whyRepair(judged: Judged, best: BestRepair, stakes: Stakes, prices: Prices): string[] {
  const { currency } = prices;
  const ends = `${percent(best.chance)} that it ends as a working unit. ${prices.whyWorking}`;
  const fallBack = `${percent(1 - best.chance)} that it is given up; then it is worth ${money(stakes.asIsMinor, currency)} as it is.`;
  if (best.lookFirst) return [ends, ...whyLookFirst(best, best.knowing!, currency), fallBack];
  if (best.plan.steps.length === 0)
    return [`${percent(nothingWrong(judged.belief))} that nothing is wrong with it any more.`, prices.whyWorking];
  const steps = best.plan.steps.slice(0, 4).map((step, i) => {
    const cost = `${minutesText(step.minutes)}, ${money(step.costMinor, currency)}`;
    return `${i + 1}. ${remedyName(judged.model, step.remedy.id)}: ${percent(step.chance)} that it works after it, ${cost}.`;
  });
  const more = best.plan.steps.length > 4 ? [`Then ${best.plan.steps.length - 4} more.`] : [];
  return [ends, ...steps, ...more, fallBack];
}

/** How the line of why begins that says what finding the trouble first is worth. */
export const FIND_FIRST = 'Find the trouble first';

function whyLookFirst({ plan }: BestRepair, { checkMinutes, workMinutes, share, valueMinor }: Knowing, currency: string): string[] {
  const dark =
    plan.steps.length > 0
      ? `trying remedies at once brings ${money(plan.expectedMinor, currency)}`
      : 'no remedy is worth trying in the dark';
  const partly = share < 0.99 ? ` The checks at hand can tell ${percent(share)} of what has to be known.` : '';
  return [
    `${FIND_FIRST}: about ${minutesText(Math.round(checkMinutes))} of checks, then ${minutesText(Math.round(workMinutes))} of work on average, bring ${money(valueMinor, currency)}; ${dark}.${partly}`,
  ];
}
