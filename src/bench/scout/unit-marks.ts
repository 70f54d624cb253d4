import { matchAt, phraseOf } from './phrase.ts';
import type { Token } from './tokens.ts';

/** By the token at which they stand: from here on the text is about this unit (null: about all), and how many tokens say so. */
export class UnitMarks extends Map<number, { readonly unit: number | null; readonly length: number }> {
  /** A list with numbers goes on over the ends of sentences. */
  sticky = false;
}

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
const THINGS = 'of|units|players|machines|pieces|terns|corries|handhelds|x';
const ALL = ['both', 'all of them', 'all units|players', 'all ~ have|are', 'each', 'neither', 'none of them'].map(phraseOf);
const MOST_UNITS = 200;

const numberIn = (word: string | undefined): number | undefined => {
  if (word === undefined) return undefined;
  const index = NUMBERS.indexOf(word);
  if (index >= 0) return index + 1;
  const digits = /^(?:x)?(\d{1,3})(?:x)?$/.exec(word);
  return digits ? Number(digits[1]) : undefined;
};

/** How many units a text speaks of, and where it goes over to one of them. */
export function unitMarks(text: string, tokens: readonly Token[]): { readonly at: UnitMarks; readonly units: number } {
  const at = listMarks(text, tokens);
  const counted = countOf(tokens);
  const speaksOfMore = counted > 1 || tokens.some(({ word }, i) => word === 'other' && tokens[i - 1]?.word === 'the');
  if (speaksOfMore && at.size === 0) wordMarks(tokens, at);
  const named = Math.max(1, ...[...at.values()].map(({ unit }) => unit ?? 1));
  return { at, units: Math.min(MOST_UNITS, Math.max(counted, named)) };
}

function countOf(tokens: readonly Token[]): number {
  for (let i = 0; i < tokens.length; i++) {
    if (/^(pair|couple|both|neither)$/.test(tokens[i]!.word)) return 2;
    const number = numberIn(tokens[i]!.word);
    const next = tokens[i + 1]?.word;
    const isOfLot = tokens[i - 1]?.word === 'of' && /^(lot|set)$/.test(tokens[i - 2]?.word ?? '');
    const counts = isOfLot || /^\d+x$|^x\d+$/.test(tokens[i]!.word) || (next !== undefined && THINGS.split('|').includes(next));
    if (number !== undefined && number > 1 && counts) return number;
  }
  return 1;
}

/** "1)", "2.", "#3", "Unit A:" at the head of what is said of one unit. */
function listMarks(text: string, tokens: readonly Token[]): UnitMarks {
  const at = new UnitMarks();
  tokens.forEach(({ word, to, from }, i) => {
    const after = text.slice(to, to + 1);
    const before = text.slice(0, from).trimEnd().slice(-1);
    const heads = before === '' || /[.:;,\n!?)(]/.test(before) || text.slice(0, from).endsWith('\n');
    if (heads && /^\d{1,2}$/.test(word) && /[):.]/.test(after) && text[to + 1] !== undefined && /\s/.test(text[to + 1]!))
      at.set(i, { unit: Number(word), length: 1 });
    if (heads && /^#\d{1,2}$/.test(word)) at.set(i, { unit: Number(word.slice(1)), length: 1 });
    const label = /^(unit|player|item|number|no)$/.test(word) ? tokens[i + 1] : undefined;
    if (heads && label && /^([a-h]|\d{1,2})$/.test(label.word) && /[:)\-–]/.test(text.slice(label.to, label.to + 2)))
      at.set(i, { unit: /\d/.test(label.word) ? Number(label.word) : label.word.charCodeAt(0) - 96, length: 2 });
  });
  const numbers = [...at.values()].map(({ unit }) => unit);
  if (numbers.length < 2 || numbers.some((unit) => unit === null || unit < 1)) return new UnitMarks();
  at.sticky = true;
  return at;
}

/** "the first …, the second …", "one …, the other …", "both …". */
function wordMarks(tokens: readonly Token[], at: UnitMarks): void {
  let last = 0;
  tokens.forEach(({ word }, i) => {
    const ordinal = ORDINALS.indexOf(word);
    const isThe = tokens[i - 1]?.word === 'the';
    if (ordinal >= 0 && isThe) at.set(i - 1, { unit: (last = ordinal + 1), length: 2 });
    else if (
      word === 'one' &&
      (i === 0 || (!/^(the|no|any|only|each|every)$/.test(tokens[i - 1]!.word) && !ORDINALS.includes(tokens[i - 1]!.word))) &&
      !nextIsThing(tokens, i)
    )
      at.set(i, { unit: ++last, length: 1 });
    else if (word === 'other' && isThe) at.set(i - 1, { unit: ++last, length: 2 });
    else if (ALL.some((phrase) => matchAt(tokens, i, tokens.length, phrase) !== undefined)) at.set(i, { unit: null, length: 0 });
  });
}

const nextIsThing = (tokens: readonly Token[], i: number): boolean =>
  /^(year|month|day|time|key|button|corner|side)s?$/.test(tokens[i + 1]?.word ?? '');
