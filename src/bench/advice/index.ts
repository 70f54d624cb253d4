export { createAdvisor, type Advisor } from './advisor.ts';
export type { Expected, Foresight } from './foresight.ts';
export { AdviceError } from './advice-error.ts';
