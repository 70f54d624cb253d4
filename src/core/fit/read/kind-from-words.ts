import type { Pad, PartKind } from '../pattern.ts';

/** Words of a name or description that tell the kind of a part; the first that is met counts. */
const RULES: readonly (readonly [RegExp, PartKind])[] = [
  [/\b(ffc|fpc|flex(ible)? (flat )?cable|ribbon)/i, 'ribbon-socket'],
  [/\b(usb|connector|receptacle|header|socket|jack|plug|jst|terminal)/i, 'connector'],
  [/\b[a-z]*(soic|sop|so|qfp|sot|tsop|ssop|msop)(?=[-_\d\s]|$)/i, 'gull-wing'],
  [/\b(plcc|soj)(?=[-_\d\s]|$)/i, 'j-lead'],
  [/\b[a-z]*(qfn|dfn|son|lga)(?=[-_\d\s]|$)/i, 'no-lead'],
  [/\b(axial|radial)/i, 'wire-legs'],
];

/** The kind of a part as its words and pads tell it; the person may know better. Common practice, no source. */
export function kindFromWords(words: string, pads: readonly Pad[]): PartKind {
  const named = RULES.find(([pattern]) => pattern.test(words.replaceAll('_', ' ')));
  if (named) return named[1];
  const copper = pads.filter(({ kind }) => kind !== 'peg');
  if (copper.length > 0 && copper.every(({ kind }) => kind === 'through')) return 'legs';
  return copper.length === 2 && copper.every(({ kind }) => kind === 'surface') ? 'chip' : 'other';
}
