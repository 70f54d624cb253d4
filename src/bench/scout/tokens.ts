import type { Span } from './listing-reading.ts';

/** A word of a text in small letters, with where it stands. Contractions are taken apart: "won't" is will, not. */
export interface Token extends Span {
  readonly word: string;
}

const WORD = /[\p{L}\p{N}#]+(?:['’][\p{L}]+)*%?/gu;
const PARTS: Readonly<Record<string, readonly string[]>> = {
  cannot: ['can', 'not'],
  cant: ['can', 'not'],
  "can't": ['can', 'not'],
  "won't": ['will', 'not'],
  wont: ['will', 'not'],
  dont: ['do', 'not'],
  doesnt: ['does', 'not'],
  isnt: ['is', 'not'],
  "ain't": ['is', 'not'],
};

export function tokensOf(text: string): Token[] {
  return [...text.matchAll(WORD)].flatMap((match) => {
    const word = match[0].toLowerCase().replaceAll('’', "'");
    const span = { from: match.index, to: match.index + match[0].length };
    return wordsOf(word).map((each) => ({ word: each, ...span }));
  });
}

function wordsOf(word: string): readonly string[] {
  if (Object.hasOwn(PARTS, word)) return PARTS[word]!;
  if (word.endsWith("n't")) return [word.slice(0, -3), 'not'];
  return [word.replace(/'(s|m|re|ve|ll|d)$/, '')];
}
