import type { Claim } from '../events/index.ts';
import type { ReadableModel, TaughtWords } from './listing-reading.ts';
import { matchAt, phraseOf, type Phrase } from './phrase.ts';
import { WORD_RULES, type Rule } from './rules-of-words.ts';
import type { Token } from './tokens.ts';
import { TOPICS, type Topic } from './topics.ts';

/** Words of a text that mean something to the reader: tokens `from` to before `to`. */
export type Mark = { readonly from: number; readonly to: number } & (
  | { readonly is: 'rule'; readonly rule: Rule }
  | { readonly is: 'topic'; readonly topic: Topic }
  | { readonly is: 'taught'; readonly words: string; readonly claim: Claim }
);

type Entry = { readonly phrase: Phrase } & (
  | { readonly is: 'rule'; readonly rule: Rule }
  | { readonly is: 'topic'; readonly topic: Topic }
  | { readonly is: 'taught'; readonly words: string; readonly claim: Claim }
);

/** Everything to look for: taught words first, then rules, common topics, and what the model itself calls its functions and blocks. */
export function dictionary(model: ReadableModel, taught: readonly TaughtWords[]): readonly Entry[] {
  return [
    ...taught.map(({ words, claim }): Entry => ({ is: 'taught', phrase: literal(words), words, claim })),
    ...WORD_RULES.map(({ phrase, rule }): Entry => ({ is: 'rule', phrase, rule })),
    ...TOPICS.flatMap((topic) => topic.phrases.map((phrase): Entry => ({ is: 'topic', phrase, topic }))),
    ...ownTopics(model).map((topic): Entry => ({ is: 'topic', phrase: topic.phrases[0]!, topic })),
  ];
}

const literal = (words: string): Phrase => phraseOf(words.toLowerCase().replaceAll(/[~|*]/g, '').trim().replaceAll(/\s+/g, ' '));

/** The names of blocks as topics, without the marks of parts: "Sound amplifier U3" is sound amplifier. Names of one word are left to the common words. */
function ownTopics({ blocks }: ReadableModel): Topic[] {
  return blocks.flatMap(({ id, name }) => {
    const words = name
      .replaceAll(/\b[A-Z]{1,2}\d+\b|\([^)]*\)/g, '')
      .replaceAll(/[^\p{L}\p{N} ]/gu, ' ')
      .trim()
      .split(/\s+/);
    if (words.length < 2 || words.length > 3) return [];
    return [{ id: `block ${id}`, phrases: [literal(words.join(' '))], functions: [], places: [id], no: 'missing' as const }];
  });
}

/** The marks of tokens `start` to before `end`, from left to right and not overlapping; of those that begin together the longest, then the first of the dictionary. */
export function marksIn(tokens: readonly Token[], start: number, end: number, entries: readonly Entry[]): Mark[] {
  const marks: Mark[] = [];
  for (let at = start; at < end;) {
    let best: { readonly entry: Entry; readonly to: number } | undefined;
    for (const entry of entries) {
      const to = matchAt(tokens, at, end, entry.phrase);
      if (to !== undefined && (!best || to > best.to)) best = { entry, to };
    }
    if (best) {
      const { phrase: _, ...rest } = best.entry;
      marks.push({ ...rest, from: at, to: best.to } as Mark);
    }
    at = best ? best.to : at + 1;
  }
  return marks;
}
