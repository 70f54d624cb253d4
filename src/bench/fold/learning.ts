import type { Apply } from './fold.ts';

export const learningSet: Apply<'learning-set'> = ({ state }, { body }) => {
  state.learning.halfLifeDays = body.half_life_days;
  return null;
};

export const learnedReset: Apply<'learned-reset'> = ({ state }, { body, at }) => {
  state.learning.resets.set(body.about, at);
  return null;
};

export const learnedTakenIn: Apply<'learned-taken-in'> = ({ state }, { body, id, at }) => {
  state.learning.takenIn.push({ ...body, eventId: id, at });
  return null;
};

/** Words of listings mean this claim from now on; with null nothing any more. */
export const wordsTaught: Apply<'words-taught'> = ({ state }, { body }) => {
  const key = body.words.toLowerCase();
  if (body.claim === null) state.taughtWords.delete(key);
  else state.taughtWords.set(key, { words: body.words, claim: body.claim });
  return null;
};
