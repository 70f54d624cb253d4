import type { AdviceView, ItemFile } from '../../../bench/views/index.ts';
import { close } from './open-to.ts';
import { factor, modelOf, note, pounds, type Workplace } from './workplace.ts';

const PROOF_MINUTES = 3;
/** Names of the bench are cut to so many letters. */
const LONGEST_NAME = 64;
const DAY_MINUTES = 24 * 60;
/** What a grade does to the usual price (an assumption of the walk). */
const GRADES = [
  { grade: 'A', text: 'hardly used', times: 1.2 },
  { grade: 'B', text: 'light scratches, window clear', times: 1 },
  { grade: 'C', text: 'scratched shell, all works', times: 0.8 },
] as const;

/** The name of the advice to do a step of proof. */
export const proofAdviceId = (stepId: string): string => `prove.${stepId}`.slice(0, LONGEST_NAME);

/** Does the step of proof that the advice names; the hidden truth answers for the functions. */
export function prove(place: Workplace, file: ItemFile, advice: AdviceView): void {
  close(place, file);
  const step = file.proof.steps.find((each) => advice.id === proofAdviceId(each.id))!;
  const proved = modelOf(place, file).file.functions.find((fn) => step.id === `works.${fn.id}`.slice(0, LONGEST_NAME));
  const works = !proved || place.truth.tryFunction(file.row.id, proved.id, []) === 'works';
  note(place, 'proof-step-done', { item_id: file.row.id, step: step.id, outcome: works ? 'pass' : 'fail', minutes: PROOF_MINUTES });
  place.clock.pass(PROOF_MINUTES);
  place.say(`    ${step.name}: ${works ? 'pass' : 'fail'}.`);
}

export function grade(place: Workplace, file: ItemFile): void {
  const { grade: letter, text } = GRADES[Math.floor(place.random() * GRADES.length)]!;
  note(place, 'graded', { item_id: file.row.id, scale: 'salvor-1', grade: letter, text });
  place.say(`    Graded ${letter}: ${text}.`);
}

export function list(place: Workplace, file: ItemFile): void {
  const times = GRADES.find((each) => each.grade === file.grade?.grade)?.times ?? 1;
  const price_minor = Math.round((modelOf(place, file).file.prices.working * times) / 100) * 100 - 1;
  note(place, 'listed', { item_id: file.row.id, price_minor, place: 'Fairwater Market' });
  place.say(`    Offered for ${pounds(place, price_minor)}.`);
}

/** A buyer comes after some days and pays about what is asked. */
export function sell(place: Workplace, file: ItemFile): void {
  place.clock.pass(DAY_MINUTES * (2 + Math.floor(place.random() * 18)));
  const asking = place.bench.state().items.get(file.row.id)!.asking!.priceMinor;
  saleOf(place, file, 'working', Math.round(Math.min(asking, asking * factor(0.08, place.random))));
}

/** Sold as it is, for parts. */
export function giveUp(place: Workplace, file: ItemFile): void {
  close(place, file);
  place.clock.pass(DAY_MINUTES * 5);
  const { for_parts, spread } = modelOf(place, file).file.prices;
  saleOf(place, file, 'for-parts', Math.round(for_parts * factor(spread, place.random)));
}

function saleOf(place: Workplace, file: ItemFile, as: 'working' | 'for-parts', price_minor: number): void {
  const { currency, feePercent, postageOutMinor } = place.bench.state().settings;
  const fees_minor = Math.round((price_minor * feePercent) / 100);
  note(place, 'sold', { item_id: file.row.id, as, price_minor, fees_minor, postage_minor: postageOutMinor, currency });
  place.say(`    Sold ${as === 'working' ? 'as working' : 'for parts'} for ${pounds(place, price_minor)}.`);
}
