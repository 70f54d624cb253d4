import type { Model, ModelFile } from '../models/index.ts';
import type { LearnedView } from '../views/index.ts';
import type { LearnedModel } from './learned-model.ts';

type Numbers = LearnedView['numbers'];

/**
 * A model with the numbers that the bench has learned in place of its own: rates of faults, minutes of remedies, chances of remedies, of which all
 * move by the same odds, what good boards show, and prices. `stamp` names these numbers among all that are ever put into the model. The same model when
 * nothing was learned of it.
 */
export function withLearned(model: Model, { numbers, references, priceSpread }: LearnedModel, stamp: string): Model {
  if (numbers.length === 0) return model;
  const { file } = model;
  const found = new Map(numbers.map((each) => [each.id, each]));
  const find = (about: Numbers[number]['about'], id: string) => found.get(`${about}.${file.id}.${id}`);
  const faults = file.faults.map((fault) => ({ ...fault, rate: Math.min(0.95, find('fault-rate', fault.id)?.mean ?? fault.rate) }));
  const remedies = file.remedies.map((remedy) => learnedRemedy(remedy, find('remedy-chance', remedy.id), find('remedy-time', remedy.id)));
  const price = (about: 'price' | 'price-for-parts', before: number) => Math.round(found.get(`${about}.${file.id}`)?.mean ?? before);
  const prices = {
    working: price('price', file.prices.working),
    for_parts: price('price-for-parts', file.prices.for_parts),
    spread: priceSpread ?? file.prices.spread,
  };
  return {
    ...model,
    own: { stamp, references, price: ownPrice(file, found.get(`price.${file.id}`)) },
    file: { ...file, faults, remedies, prices },
  };
}

const ownPrice = (file: ModelFile, number: Numbers[number] | undefined) =>
  number ? { shippedMinor: file.prices.working, sales: number.jobs.length } : null;

function learnedRemedy(
  remedy: ModelFile['remedies'][number],
  chance: Numbers[number] | undefined,
  time: Numbers[number] | undefined,
): ModelFile['remedies'][number] {
  if (!chance) return { ...remedy, minutes: time?.mean ?? remedy.minutes };
  const shift = logit(chance.mean) - logit(chance.before);
  const mends = Object.entries(remedy.mends).map(([fault, before]) => [fault, before > 0 && before < 1 ? shifted(before, shift) : before]);
  return { ...remedy, minutes: time?.mean ?? remedy.minutes, mends: Object.fromEntries(mends) };
}

const logit = (chance: number): number => {
  const inside = Math.min(0.999, Math.max(0.001, chance));
  return Math.log(inside / (1 - inside));
};
const shifted = (chance: number, by: number): number => 1 / (1 + Math.exp(-(logit(chance) + by)));
