import type { Model, ModelFile } from '../models/index.ts';
import type { LearnedView } from '../views/index.ts';

type Numbers = LearnedView['numbers'];

/**
 * A model with the numbers that the bench has learned in place of its own: rates of faults, minutes of remedies, and chances of remedies, of which all
 * move by the same odds. The same model when nothing was learned of it.
 */
export function withLearned(model: Model, numbers: Numbers): Model {
  const own = numbers.filter(({ model_id }) => model_id === model.file.id);
  if (own.length === 0) return model;
  const find = (about: Numbers[number]['about'], id: string) =>
    own.find((each) => each.about === about && each.id === `${about}.${model.file.id}.${id}`);
  const faults = model.file.faults.map((fault) => ({ ...fault, rate: Math.min(0.95, find('fault-rate', fault.id)?.mean ?? fault.rate) }));
  const remedies = model.file.remedies.map((remedy) =>
    learnedRemedy(remedy, find('remedy-chance', remedy.id), find('remedy-time', remedy.id)),
  );
  return { ...model, file: { ...model.file, faults, remedies } };
}

function learnedRemedy(
  remedy: ModelFile['remedies'][number],
  chance: Numbers[number] | undefined,
  time: Numbers[number] | undefined,
): ModelFile['remedies'][number] {
  const shift = chance ? logit(chance.mean) - logit(chance.before) : 0;
  const mends = Object.entries(remedy.mends).map(([fault, before]) => [fault, before > 0 && before < 1 ? shifted(before, shift) : before]);
  return { ...remedy, minutes: time?.mean ?? remedy.minutes, mends: Object.fromEntries(mends) };
}

const logit = (chance: number): number => {
  const inside = Math.min(0.999, Math.max(0.001, chance));
  return Math.log(inside / (1 - inside));
};
const shifted = (chance: number, by: number): number => 1 / (1 + Math.exp(-(logit(chance) + by)));
