import type { Apply } from './fold.ts';

export const learningSet: Apply<'learning-set'> = ({ state }, { body }) => {
  state.learning.halfLifeDays = body.half_life_days;
  return null;
};

export const learnedReset: Apply<'learned-reset'> = ({ state }, { body, at }) => {
  state.learning.resets.set(body.about, at);
  return null;
};
