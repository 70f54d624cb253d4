import type { Belief, RepairPlan } from '../../core/diagnosis/index.ts';
import type { DeviceModel, Stakes } from '../../core/diagnosis/model.ts';
import type { Outcome } from '../../core/planning/index.ts';
import type { Model } from '../models/index.ts';
import { knowing, type Knowing, type Telling } from './knowing.ts';
import { planOrGiveUp } from './plan-or-give-up.ts';
import { nothingWrong } from './well-chance.ts';

/** Mending a unit in the better of two ways: by trying remedies at once, or by finding the trouble first. */
export interface BestRepair {
  /** False when giving up is worth more than either. */
  readonly possible: boolean;
  readonly lookFirst: boolean;
  readonly plan: RepairPlan;
  readonly knowing: Knowing | null;
  readonly outcomes: readonly Outcome[];
  readonly chance: number;
  readonly minutes: number;
  readonly spendMinor: number;
}

/** Without any remedy worth trying, repair is the road of a unit that is well as it is, and only likely ones may take it. */
const LIKELY_WELL = 0.5;

/** What looking first brings is an estimate: a gain below this share of what is at stake is taken as none. */
const LEAST_GAIN = 0.02;

export function bestRepair(model: Model, alone: DeviceModel, belief: Belief, stakes: Stakes, telling: Telling): BestRepair {
  const plan = planOrGiveUp(alone, belief, stakes);
  const tries = plan.steps.length > 0 || nothingWrong(belief) >= LIKELY_WELL;
  const given = [{ valueMinor: stakes.asIsMinor, chance: 1 }];
  const dark = tries ? plan : { outcomes: given, chance: 0, minutes: 0, spendMinor: 0 };
  const known = knowing(model, alone, belief, stakes, telling, dark);
  const darkMinor = tries ? plan.expectedMinor : stakes.asIsMinor;
  if (known && known.valueMinor > darkMinor + LEAST_GAIN * Math.max(0, stakes.workingMinor - stakes.asIsMinor)) {
    const { outcomes, chance, spendMinor } = known;
    return {
      possible: true,
      lookFirst: true,
      plan,
      knowing: known,
      outcomes,
      chance,
      minutes: known.checkMinutes + known.workMinutes,
      spendMinor,
    };
  }
  return { possible: tries, lookFirst: false, plan, knowing: known, ...pick(dark) };
}

const pick = ({ outcomes, chance, minutes, spendMinor }: Pick<BestRepair, 'outcomes' | 'chance' | 'minutes' | 'spendMinor'>) => ({
  outcomes,
  chance,
  minutes,
  spendMinor,
});
