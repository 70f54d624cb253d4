export { goalsOf, needsOf, type Goal, type GoalNeeds } from './goals.ts';
export { wayIn, type WayIn, type WayOptions, type WayStep } from './way-in.ts';
export { stepTimesOf, ticksOf, screwCountOf } from './of-item.ts';
export { screwMat } from './screw-mat.ts';
export { screwCount, type ScrewCount, type ScrewFinding } from './screw-count.ts';
