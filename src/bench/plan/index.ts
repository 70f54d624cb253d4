export { openPlanRoom, type PlanRoom } from './plan-room.ts';
export { runPlanJob, type AnswerOf, type PlanJob } from './jobs.ts';
