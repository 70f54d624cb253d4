import { fitPart, type FitAnswer, type Pattern } from '../../src/core/fit/index.ts';
import type { PairAnswer } from './footprints.ts';

const asksFor = ({ answer, asks }: FitAnswer, code: string): boolean =>
  answer === 'cannot-say' && asks.some((ask) => ask.decides && ask.code === code);

/** What Salvor answers to a pair, in the words of the table; undefined when it is none of them. */
export function answerPair(part: Pattern, place: Pattern): PairAnswer | undefined {
  const fit = fitPart(part, place);
  if (fit.answer === 'fits') return 'fits';
  if (fit.answer === 'does-not-line-up') return 'no';
  if (asksFor(fit, 'feet')) return 'review';
  return asksFor(fit, 'peg') && fitPart(place, part).answer === 'fits' ? 'one way' : undefined;
}
