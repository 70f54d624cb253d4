import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { modelJsonSchema } from '../../src/bench/models/index.ts';

const MODELS = join(import.meta.dirname, '../../models');
const published = JSON.parse(readFileSync(join(MODELS, 'model.schema.json'), 'utf8')) as Record<string, unknown>;

describe('the published shape of a model file', () => {
  it('is that of the program; if not, run `node scripts/write-model-schema.mjs`', () => {
    expect(published).toEqual(JSON.parse(JSON.stringify(modelJsonSchema())));
  });

  const validate = new Ajv2020({ allErrors: true }).compile(published);
  const textOf = (id: string): string => readFileSync(join(MODELS, id, 'model.yaml'), 'utf8');

  it.each(['any-pocket-player', 'tern-tn10', 'tern-tn20', 'corrie-cp4'])(
    'takes %s as it is written, which says so in its first line',
    (id) => {
      expect(textOf(id).split('\n')[0]).toBe('# yaml-language-server: $schema=../model.schema.json');
      validate(parse(textOf(id)));
      expect(validate.errors ?? []).toEqual([]);
    },
  );

  it.each<[string, Record<string, unknown>, string]>([
    ['an unknown section', { colour: 'red' }, ''],
    ['a chance above 1', { unknown_rate: 1.5 }, '/unknown_rate'],
    ['a block without a name', { blocks: [{ id: 'x' }] }, '/blocks/0'],
    ['an unknown finding', { faults: [{ id: 'x', name: 'X', block: 'x', mode: 'open', rate: 0.1, seen: { rusty: 1 } }] }, '/faults/0/seen'],
  ])('refuses %s', (_, changes, place) => {
    expect(validate({ ...parse(textOf('tern-tn10')), ...changes })).toBe(false);
    expect(validate.errors!.map(({ instancePath }) => instancePath)).toContain(place);
  });

  it('lets a section be left out only by a model that is based on another', () => {
    const { blocks: _, ...rest } = parse(textOf('tern-tn10')) as Record<string, unknown>;
    expect(validate(rest)).toBe(false);
    expect(validate({ ...rest, based_on: 'any-pocket-player' })).toBe(true);
  });
});
