import { unitMarks } from './unit-marks.ts';
import type { Token } from './tokens.ts';

/** A stretch of a text that says one thing: tokens `start` to before `end`. */
export interface Clause {
  readonly start: number;
  readonly end: number;
  /** Its sentence, from 0: what has no subject takes that of the clause before it in the same sentence. */
  readonly sentence: number;
  /** It is asked, not said. */
  readonly asked: boolean;
  /** The unit that it is about, from 1; null for all. */
  readonly unit: number | null;
}

export interface Clauses {
  readonly clauses: readonly Clause[];
  readonly units: number;
}

const SENTENCE_END = /[.!?;•\n]|\s[-–—]\s/u;
const CLAUSE_WORDS = new Set(['but', 'although', 'though', 'because', 'since', 'however', 'yet', 'while', 'whereas', 'even', 'only']);

/** Sentences and clauses of a text, each with the unit that it speaks of. */
export function clausesOf(text: string, tokens: readonly Token[]): Clauses {
  const { at: marks, units } = unitMarks(text, tokens);
  const clauses: Clause[] = [];
  let sentence = 0;
  let unit: number | null = null;
  let start = 0;
  for (let i = 0; i <= tokens.length; i++) {
    const gap = i === 0 ? '' : text.slice(tokens[i - 1]!.to, tokens[i]?.from ?? text.length);
    const mark = marks.get(i);
    const ends = i === tokens.length || SENTENCE_END.test(gap);
    if (!ends && !/[,:()/]/.test(gap) && !CLAUSE_WORDS.has(tokens[i]!.word) && !mark) continue;
    if (i > start) clauses.push({ start, end: i, sentence, unit, asked: false });
    if (gap.includes('?'))
      for (const [at, clause] of clauses.entries()) if (clause.sentence === sentence) clauses[at] = { ...clause, asked: true };
    if (ends) sentence++;
    if (mark) unit = mark.unit;
    else if (ends && unit !== null && !marks.sticky) unit = null;
    start = mark ? i + mark.length : i;
  }
  return { clauses, units };
}
