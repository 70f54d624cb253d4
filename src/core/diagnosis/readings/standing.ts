import type { ReadingEvidence } from './evidence.ts';

/** What counts of the evidence of one stretch: a newer reading of a point, or trial of a function, replaces an older one. */
export function standing(evidence: readonly ReadingEvidence[]): readonly ReadingEvidence[] {
  const last = new Map(evidence.map((each) => [about(each), each]));
  return evidence.filter((each) => last.get(about(each)) === each);
}

const about = (each: ReadingEvidence): string =>
  each.kind === 'reading' ? `point ${each.point}` : `function ${each.function} ${each.honesty === undefined ? '' : each.id}`;
