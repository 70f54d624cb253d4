import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faultOf, fuzz } from './fuzz.ts';
import { PARSERS, type Parser } from './parsers.ts';

const RUNS = 1500;
const CASES = join(import.meta.dirname, 'cases');

/** Texts that a reader once fell over, named `<reader>--<what>.txt`. */
const cases = readdirSync(CASES).map(
  (file) => [file, PARSERS.find(({ name }) => file.startsWith(`${name.replaceAll(' ', '-')}--`))] as const,
);

describe('the reader of', () => {
  it.each(PARSERS.map((parser) => [parser.name, parser] as const))(
    '%s takes the good texts, and takes or refuses with words whatever else comes',
    (name, parser) => {
      const result = fuzz(parser, 20_260_501, RUNS);
      expect(result.crash, name).toBeNull();
      expect(result.tried).toBe(RUNS);
      expect(result.taken, 'texts that got through').toBeGreaterThan(RUNS / 100);
    },
  );

  it.each(cases)('%s: does not fall over what it once fell over', (file, parser) => {
    expect(parser, 'the name of the file begins with the name of a reader').toBeDefined();
    expect(faultOf(parser as Parser, readFileSync(join(CASES, file), 'utf8')).fault).toBeNull();
  });
});

describe('the search itself', () => {
  const brittle: Parser = {
    name: 'brittle',
    seeds: ['a good text'],
    words: ['boom'],
    read: (text) => {
      if (text.includes('boom')) throw new TypeError('fell over');
      return text.includes('good') ? null : 'the text is not good';
    },
  };

  it('finds a reader that falls over, and the smallest text that shows it', () => {
    const { crash } = fuzz(brittle, 1, 10_000);
    expect(crash?.error).toContain('fell over');
    expect(crash?.text.length).toBeLessThanOrEqual('a good textboom'.length);
  });

  it('finds a reader that refuses without a word', () => {
    expect(fuzz({ ...brittle, read: () => '' }, 1, 10).crash?.error).toContain('refused with');
  });

  it('tries the same texts for the same seed', () => {
    const texts: string[][] = [[], []];
    for (const kept of texts) fuzz({ ...brittle, read: (text) => (kept.push(text), null) }, 5, 50);
    expect(texts[0]).toEqual(texts[1]);
  });
});
