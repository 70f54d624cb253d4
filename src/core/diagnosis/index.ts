export type { Behaviour, Check, DeviceFunction, DeviceModel, Evidence, Fault, Remedy, Shift, Stage, Stakes, TestPoint } from './model.ts';
export type { Belief } from './belief.ts';
export { believe } from './believe.ts';
export { assertBelief } from './assert-belief.ts';
export { nextChecks, paysForItself, type CheckOutcome, type RankedCheck, type ReadingsAhead } from './next-checks.ts';
export { rankRemedies, type RankedRemedy } from './rank-remedies.ts';
export { repairPlan, type RepairPlan, type RepairStep } from './repair-plan.ts';
export { expectedCost, orderByChancePerCost, type Action } from './order-by-chance-per-cost.ts';
export { DiagnosisError, marginals, posteriorOverSets, type Factor } from './posterior-over-sets.ts';
