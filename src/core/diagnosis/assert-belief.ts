import type { Belief } from './belief.ts';
import { DiagnosisError } from './posterior-over-sets.ts';

const CLOSE = 1e-9;

/** The law of a belief, for tests: throws DiagnosisError with what is broken, if anything is. */
export function assertBelief(belief: Belief): void {
  const [broken] = brokenLaws(belief);
  if (broken !== undefined) throw new DiagnosisError('unsound-belief', broken);
}

/** The laws that a belief breaks, as sentences; none when it is sound. */
function brokenLaws(belief: Belief): string[] {
  const broken: string[] = [];
  const chances = [belief.none, belief.unknown, ...belief.marginal.values(), ...belief.sets.map(({ chance }) => chance)];
  if (chances.some((p) => !(p >= 0 && p <= 1 + CLOSE))) broken.push('a chance lies outside 0 to 1');
  const total = belief.sets.reduce((sum, { chance }) => sum + chance, belief.unknown);
  if (!(Math.abs(total - 1) <= CLOSE)) broken.push(`all hypotheses together have ${total}, not 1`);
  for (const [fault, chance] of belief.marginal) {
    const summed = belief.sets.reduce((sum, set) => (set.faults.includes(fault) ? sum + set.chance : sum), 0);
    if (!(Math.abs(summed - chance) <= CLOSE)) broken.push(`the chance of ${fault} is not that of the sets that hold it`);
  }
  const empty = belief.sets.find(({ faults }) => faults.length === 0);
  if (!empty || empty.chance !== belief.none) broken.push('"nothing is wrong" is not the chance of the empty set');
  if (belief.sets.some(({ chance }, i) => i > 0 && chance > belief.sets[i - 1]!.chance)) broken.push('the sets are not in order');
  if (belief.odd.some(({ chance }) => !(chance >= 0 && chance <= 1 + CLOSE))) broken.push('odd evidence has a chance outside 0 to 1');
  return broken;
}
