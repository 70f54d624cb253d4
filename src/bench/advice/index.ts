export { createAdvisor, type Advisor } from './advisor.ts';
export { AdviceError } from './advice-error.ts';
export { HONESTY_PRIOR } from './honesty.ts';
