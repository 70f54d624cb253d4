import type { RepairPlan } from '../../core/diagnosis/index.ts';
import type { DeviceModel, Stakes } from '../../core/diagnosis/model.ts';
import { spreadAbove, surely } from '../../core/planning/index.ts';
import type { Judged } from './beliefs.ts';
import { planOrGiveUp } from './plan-or-give-up.ts';
import type { Prices } from './prices.ts';
import type { RoadOption } from './road-option.ts';
import { nothingWrong } from './well-chance.ts';
import { minutesText, money, percent, remedyName } from './say.ts';

/** Mending the unit by itself: the plan of remedies and what it is worth. */
export interface RepairRoad {
  readonly option: RoadOption;
  readonly plan: RepairPlan;
}

/** Without any remedy worth trying this is the road of a unit that is well as it is, and only likely ones may take it. */
const LIKELY_WELL = 0.5;

export function repairRoad(judged: Judged, alone: DeviceModel, stakes: Stakes, prices: Prices): RepairRoad {
  const plan = planOrGiveUp(alone, judged.belief, stakes);
  const possible = plan.steps.length > 0 || nothingWrong(judged.belief) >= LIKELY_WELL;
  const outcomes = possible ? spreadAbove(plan.outcomes, stakes.asIsMinor, prices.workingMinor, prices.spread) : surely(0);
  const option: RoadOption = {
    road: 'repair',
    possible,
    outcomes,
    chance: possible ? plan.chance : 0,
    minutes: possible ? plan.minutes : 0,
    spendMinor: possible ? plan.spendMinor : 0,
    why: possible ? whyRepair(judged, plan, stakes, prices) : ['No remedy of the model is worth trying on what is believed now.'],
  };
  return { option, plan };
}

function whyRepair({ model, belief }: Judged, plan: RepairPlan, stakes: Stakes, prices: Prices): string[] {
  const { currency } = prices;
  if (plan.steps.length === 0) return [`${percent(nothingWrong(belief))} that nothing is wrong with it any more.`, prices.whyWorking];
  const steps = plan.steps.slice(0, 4).map((step, i) => {
    const cost = `${minutesText(step.minutes)}, ${money(step.costMinor, currency)}`;
    return `${i + 1}. ${remedyName(model, step.remedy.id)}: ${percent(step.chance)} that it works after it, ${cost}.`;
  });
  const more = plan.steps.length > 4 ? [`Then ${plan.steps.length - 4} more.`] : [];
  const fallBack = `${percent(1 - plan.chance)} that it is given up; then it is worth ${money(stakes.asIsMinor, currency)} as it is.`;
  return [`${percent(plan.chance)} that it ends as a working unit. ${prices.whyWorking}`, ...steps, ...more, fallBack];
}
