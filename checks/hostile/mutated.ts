import * as fc from 'fast-check';

type Edit =
  | { readonly does: 'drop'; readonly at: number; readonly length: number }
  | { readonly does: 'repeat'; readonly at: number; readonly length: number; readonly times: number }
  | { readonly does: 'insert'; readonly at: number; readonly text: string }
  | { readonly does: 'move'; readonly at: number; readonly length: number; readonly to: number }
  | { readonly does: 'cut'; readonly at: number };

/** Bits of text that have hurt readers of text before. */
const USUAL_TROUBLE = [
  '\0',
  '\r',
  '\n',
  '\t',
  '\uFEFF',
  '\u2028',
  '\uD800',
  '\u202E',
  'ı',
  '𝟙',
  '"',
  "'",
  '`',
  '\\',
  '/',
  '../',
  '%s',
  '${x}',
  '{}',
  '[',
  '(',
  ')',
  '<',
  '&',
  '*',
  '-',
  '+',
  '=',
  '__proto__',
  'constructor',
  'toString',
  'null',
  'NaN',
  'Infinity',
  '-0',
  '1e309',
  '1e-400',
  '0x10',
  '99999999999999999999',
  '-1',
  '.',
  ',',
  ';',
  ':',
  '#',
  '@',
  '|',
  '~',
];

const place = fc.nat({ max: 2000 });
const length = fc.nat({ max: 40 });

/** Texts made of good ones (`seeds`) by a few edits, with words of the language itself (`words`) and what has hurt before. Shrinks towards the seed. */
export function mutated(seeds: readonly string[], words: readonly string[]): fc.Arbitrary<string> {
  const text = fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...words, ...USUAL_TROUBLE) },
    { weight: 1, arbitrary: fc.string({ maxLength: 6, unit: 'binary' }) },
  );
  const edit: fc.Arbitrary<Edit> = fc.oneof(
    fc.record({ does: fc.constant('drop' as const), at: place, length }),
    fc.record({ does: fc.constant('repeat' as const), at: place, length, times: fc.nat({ max: 12 }) }),
    fc.record({ does: fc.constant('insert' as const), at: place, text }),
    fc.record({ does: fc.constant('move' as const), at: place, length, to: place }),
    fc.record({ does: fc.constant('cut' as const), at: place }),
  );
  return fc.tuple(fc.constantFrom(...seeds), fc.array(edit, { maxLength: 6 })).map(([seed, edits]) => edits.reduce(edited, seed));
}

function edited(text: string, edit: Edit): string {
  const at = text.length === 0 ? 0 : edit.at % (text.length + 1);
  if (edit.does === 'cut') return text.slice(0, at);
  if (edit.does === 'insert') return text.slice(0, at) + edit.text + text.slice(at);
  const span = text.slice(at, at + edit.length);
  const rest = text.slice(0, at) + text.slice(at + edit.length);
  if (edit.does === 'drop') return rest;
  if (edit.does === 'repeat') return text.slice(0, at) + span.repeat(edit.times) + text.slice(at);
  const to = edit.to % (rest.length + 1);
  return rest.slice(0, to) + span + rest.slice(to);
}
