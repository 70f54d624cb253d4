import type { Belief } from './believe.ts';

const CLOSE = 1e-9;

/** The laws of a belief, as sentences about what breaks them; none when it is sound. */
export function brokenLaws(belief: Belief): string[] {
  const broken: string[] = [];
  const chances = [belief.none, belief.unknown, ...belief.marginal.values(), ...belief.sets.map(({ chance }) => chance)];
  if (chances.some((p) => !(p >= 0 && p <= 1 + CLOSE))) broken.push('a chance lies outside 0 to 1');
  const total = belief.sets.reduce((sum, { chance }) => sum + chance, belief.unknown);
  if (Math.abs(total - 1) > CLOSE) broken.push(`all hypotheses together have ${total}, not 1`);
  for (const [fault, chance] of belief.marginal) {
    const summed = belief.sets.reduce((sum, set) => (set.faults.includes(fault) ? sum + set.chance : sum), 0);
    if (Math.abs(summed - chance) > CLOSE) broken.push(`the chance of ${fault} is not that of the sets that hold it`);
  }
  const empty = belief.sets.find(({ faults }) => faults.length === 0);
  if (!empty || Math.abs(empty.chance - belief.none) > CLOSE) broken.push('"nothing is wrong" is not the chance of the empty set');
  if (belief.sets.some(({ chance }, i) => i > 0 && chance > belief.sets[i - 1]!.chance)) broken.push('the sets are not in order');
  if (belief.odd.some(({ chance }) => !(chance >= 0 && chance <= 1 + CLOSE))) broken.push('odd evidence has a chance outside 0 to 1');
  return broken;
}
