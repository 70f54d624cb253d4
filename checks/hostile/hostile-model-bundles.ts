import { strToU8, zipSync, type Zippable } from 'fflate';
import type { Hostile } from './hostile-photos.ts';

const BUNDLE = {
  format: 'salvor-model',
  version: 1,
  model_id: 'reed-r1',
  name: 'Reed R1',
  currency: 'GBP',
  author: 'Marsh Lane',
  from: { copy_of: 'tern-tn10' },
  facts: [] as unknown[],
};
const fact = (more: object): object => ({
  kind: 'model-fact-set',
  body: { model_id: 'reed-r1', section: 'head', id: 'about', value: 'x', ...more },
});

/** A bundle that is right in all that is not given. */
const bundleOf = (more: object, files: Zippable = {}): Uint8Array =>
  zipSync({ 'model.json': strToU8(JSON.stringify({ ...BUNDLE, ...more })), ...files });

const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
const withText = (text: string): Uint8Array => zipSync({ 'model.json': strToU8(text) });

/** Bundles of models that are none, that lie, nest without end, or hold what no model holds. */
export function hostileModelBundles(): Hostile[] {
  const photo = 'a'.repeat(64);
  const pictured = { kind: 'model-photo-set', body: { model_id: 'reed-r1', side: 'front', photo } };
  const entries: readonly (readonly [name: string, bytes: Uint8Array])[] = [
    ['empty', new Uint8Array()],
    ['text', strToU8('no bundle')],
    ['cut off', bundleOf({}).subarray(0, 60)],
    ['without a model', zipSync({ 'other.json': strToU8('{}') })],
    ['of a later version', bundleOf({ version: 99 })],
    ['of another program', bundleOf({ format: 'other' })],
    ['without a name', bundleOf({ author: '' })],
    ['a fact of no kind', bundleOf({ facts: [{ kind: 'sold', body: {} }] })],
    ['a fact of no section', bundleOf({ facts: [fact({ section: '__proto__' })] })],
    ['a fact longer than a model', bundleOf({ facts: [fact({ value: 'x'.repeat(30_000) })] })],
    ['more facts than any model has', bundleOf({ facts: Array.from({ length: 20_001 }, () => fact({})) })],
    ['a path for a photo', bundleOf({ facts: [{ ...pictured, body: { ...pictured.body, photo: '../../device' } }] })],
    ['a photo of another hash', bundleOf({ facts: [pictured] }, { [`photos/${photo}.jpg`]: strToU8('text') })],
    ['a model that is no text', zipSync({ 'model.json': new Uint8Array([0xff, 0xfe, 0x00, 0xd8]) })],
    ['a model that is no JSON', withText('{"format":')],
    ['nested without end', withText(nested(200_000))],
    [
      'a value nested without end',
      withText(JSON.stringify({ ...BUNDLE, facts: [fact({ value: 0 })] }).replace('"value":0', `"value":${nested(100_000)}`)),
    ],
    ['a hundred megabytes of zeros', zipSync({ 'model.json': [new Uint8Array(100_000_000), { level: 9 }] })],
  ];
  return entries.map(([name, bytes]) => ({ name, bytes }));
}
