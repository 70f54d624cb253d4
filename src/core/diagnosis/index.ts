export type { Behaviour, Check, DeviceFunction, DeviceModel, Evidence, Fault, Remedy, Shift, Stage, Stakes, TestPoint } from './model.ts';
export { brokenLaws } from './assert-belief.ts';
export { believe, type Belief } from './believe.ts';
export { nextChecks, paysForItself, type CheckOutcome, type RankedCheck } from './next-checks.ts';
export { expectedCost, orderByChancePerCost, type Action } from './order-by-chance-per-cost.ts';
export { DiagnosisError, marginals, posteriorOverSets, type Factor } from './posterior-over-sets.ts';
export { rankRemedies, type RankedRemedy } from './rank-remedies.ts';
export { repairPlan, type RepairPlan, type RepairStep } from './repair-plan.ts';
