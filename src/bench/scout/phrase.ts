import type { Token } from './tokens.ts';

/** A phrase to look for: alternatives for each word, the beginning of a word, or a gap of up to three words. */
export type Phrase = readonly (readonly Part[] | 'gap')[];
type Part = { readonly text: string; readonly begins: boolean };

const LONGEST_GAP = 3;

/** A phrase as it is written in the tables: `turn*|switch* ~ on` with `|` between alternatives, `*` for any ending, `~` for up to three words. */
export const phraseOf = (text: string): Phrase =>
  text
    .split(' ')
    .map((word) => (word === '~' ? 'gap' : word.split('|').map((each) => ({ text: each.replace(/\*$/, ''), begins: each.endsWith('*') }))));

/** The index behind a phrase that begins at a token, or undefined. The shortest gap counts. */
export function matchAt(tokens: readonly Token[], start: number, end: number, phrase: Phrase, part = 0): number | undefined {
  if (part === phrase.length) return start;
  const wanted = phrase[part]!;
  if (wanted === 'gap') {
    for (let skip = 0; skip <= LONGEST_GAP; skip++) {
      const found = matchAt(tokens, start + skip, end, phrase, part + 1);
      if (found !== undefined) return found;
    }
    return undefined;
  }
  if (start >= end) return undefined;
  const { word } = tokens[start]!;
  return wanted.some(({ text, begins }) => (begins ? word.startsWith(text) : word === text))
    ? matchAt(tokens, start + 1, end, phrase, part + 1)
    : undefined;
}
