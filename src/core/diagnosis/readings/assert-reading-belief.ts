import { DiagnosisError } from '../posterior-over-sets.ts';
import { sumOf, type ReadingBelief } from './reading-belief.ts';

const CLOSE = 1e-9;
/** Sets that are too unlikely are not listed one by one. */
const UNLISTED = 1e-3;

/** The law of a belief from readings, for tests: throws DiagnosisError with what is broken, if anything is. */
export function assertReadingBelief(belief: ReadingBelief): void {
  const [broken] = brokenLaws(belief);
  if (broken !== undefined) throw new DiagnosisError('unsound-belief', broken);
}

function brokenLaws({ sets, none, unknown, marginal, odd, weights }: ReadingBelief): string[] {
  const broken: string[] = [];
  const chances = [none, unknown, ...marginal.values(), ...sets.map(({ chance }) => chance), ...odd.map(({ slip }) => slip)];
  if (chances.some((p) => !(p >= 0 && p <= 1 + CLOSE))) broken.push('a chance lies outside 0 to 1');
  const total = sumOf(weights.rows) + sumOf(weights.ofPairs) + sumOf(weights.unknown);
  if (!(Math.abs(total - 1) <= CLOSE)) broken.push(`all hypotheses together have ${total}, not 1`);
  const listed = sets.reduce((sum, { chance }) => sum + chance, unknown);
  if (!(listed <= 1 + CLOSE && listed >= 1 - UNLISTED)) broken.push(`the listed sets and the unknown have ${listed}`);
  for (const [fault, chance] of marginal) {
    const summed = sets.reduce((sum, set) => (set.faults.includes(fault) ? sum + set.chance : sum), 0);
    if (!(summed <= chance + CLOSE && summed >= chance - UNLISTED))
      broken.push(`the chance of ${fault} is not that of the sets that hold it`);
  }
  const empty = sets.find(({ faults }) => faults.length === 0);
  if (!empty || Math.abs(empty.chance - none) > CLOSE) broken.push('"nothing is wrong" is not the chance of the empty set');
  if (sets.some(({ chance }, i) => i > 0 && chance > sets[i - 1]!.chance)) broken.push('the sets are not in order');
  if (odd.some(({ slip }, i) => i > 0 && slip > odd[i - 1]!.slip)) broken.push('the evidence is not in the order of its slips');
  return broken;
}
