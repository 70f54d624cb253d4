import { meanOf, quantileOf } from '../../core/planning/index.ts';
import type { DecisionView, Road } from '../views/index.ts';
import { worksChance, type Judged } from './beliefs.ts';
import { money, percent, whole } from './say.ts';

const NOT_BY_ITSELF: Readonly<Record<Exclude<Road, 'leave'>, string>> = {
  repair: 'An assembly is mended in the unit that it goes into.',
  transplant: 'Which unit it serves best is weighed with each unit.',
  'part-out': 'It is a part already.',
};

/** An assembly by itself is kept, or sold as it is: worth its value alone when it is well, nothing when it is not. */
export function assemblyDecision(judged: Judged, currency: string): DecisionView {
  const chance = worksChance(judged);
  const slot = judged.model.file.slots.find(({ id }) => id === judged.slot);
  const value = slot?.value ?? 0;
  const outcomes = [
    { valueMinor: value, chance },
    { valueMinor: 0, chance: 1 - chance },
  ];
  const why = `${money(value, currency)} × ${percent(chance)} that it is well.`;
  const rest = { value_minor: 0, low_minor: 0, high_minor: 0, chance: 0, minutes: 0, spend_minor: 0 };
  const worth = { value_minor: whole(meanOf(outcomes)), low_minor: quantileOf(outcomes, 0.1), high_minor: quantileOf(outcomes, 0.9) };
  return {
    road: 'leave',
    options: [
      ...(['repair', 'transplant', 'part-out'] as const).map((road) => ({ road, possible: false, ...rest, why: [NOT_BY_ITSELF[road]] })),
      { road: 'leave', possible: true, ...rest, ...worth, why: [why] },
    ],
    why: [`Kept for a unit, or sold by itself, it is worth ${money(meanOf(outcomes), currency)}.`],
  };
}
