import { repairPlan, type Belief, type RepairPlan } from '../../core/diagnosis/index.ts';
import type { DeviceModel, Stakes } from '../../core/diagnosis/model.ts';

/** The plan of repair; for a unit with an empty slot there is none, for nothing that is done to the rest makes it work. */
export function planOrGiveUp(device: DeviceModel, belief: Belief, stakes: Stakes): RepairPlan {
  if (belief.absent.size === 0) return repairPlan(device, belief, stakes);
  const outcomes = [{ valueMinor: stakes.asIsMinor, chance: 1 }];
  return { steps: [], chance: 0, spendMinor: 0, minutes: 0, expectedMinor: stakes.asIsMinor, outcomes, giveUpAfter: 0 };
}
