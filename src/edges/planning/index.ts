export { openPlanWorker } from './plan-worker.ts';
