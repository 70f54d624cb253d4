export { createAdvisor, type Advisor } from './advisor.ts';
export { AdviceError } from './advice-error.ts';
