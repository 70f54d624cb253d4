import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { readListing, type ReadableModel, type ReadClaim } from '../../src/bench/scout/index.ts';
import type { Sentence } from './sentence.ts';

/** The model in whose words the sentences are expected: the general one that ships. */
export const POCKET = parse(readFileSync(join(import.meta.dirname, '../../models/any-pocket-player/model.yaml'), 'utf8')) as ReadableModel;

/** A claim as the tables write it. */
export function short({ claim, unit, hedged, contradicted }: ReadClaim): string {
  const said =
    claim.about === 'function' ? `${claim.function}=${claim.says}` : claim.about === 'place' ? `${claim.place}:${claim.sees}` : 'untested';
  return `${unit === null ? '' : `#${unit} `}${said}${hedged ? '?' : ''}${contradicted ? '!' : ''}`;
}

export interface Score {
  /** Sentences of which exactly the expected claims were read. */
  readonly right: number;
  readonly of: number;
  /** Claims that were read and expected, read and not expected, expected and not read. */
  readonly hits: number;
  readonly extra: number;
  readonly missed: number;
  readonly wrong: readonly { readonly text: string; readonly expected: readonly string[]; readonly read: readonly string[] }[];
}

export function score(sentences: readonly Sentence[]): Score {
  let [hits, extra, missed] = [0, 0, 0];
  const wrong = sentences.flatMap(([text, expected]) => {
    const read = readListing(text, POCKET).claims.map(short);
    const met = read.filter((claim) => expected.includes(claim)).length;
    hits += met;
    extra += read.length - met;
    missed += expected.filter((claim) => !read.includes(claim)).length;
    return met === read.length && met === expected.length ? [] : [{ text, expected, read }];
  });
  return { right: sentences.length - wrong.length, of: sentences.length, hits, extra, missed, wrong };
}
