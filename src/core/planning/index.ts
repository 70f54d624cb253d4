export { PlanningError } from './planning-error.ts';
export { assertDistribution, chanceBelow, meanOf, merged, quantileOf, quantilesOf, shiftedBy, surely, type Outcome } from './outcomes.ts';
export { priceSpread, spreadAbove } from './price-spread.ts';
export { sumOf, sumOfAlike } from './sum-of-lot.ts';
export { weighRoads, type RoadOption, type RoadWorth, type WeighedRoads } from './weigh-roads.ts';
export { entropyBits } from './entropy.ts';
export { courseFor, type Course, type Cure, type Worth } from './known-trouble.ts';
export * from './pile/index.ts';
