import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { cachedModels } from './cached-models.ts';
import { loadModels } from './load-models.ts';

const SHIPPED = join(import.meta.dirname, '../../../models');
const NAME = 'any-pocket-player';

let dir = '';
const models = (): string => join(dir, 'models');
const cache = (): string => join(dir, 'models.json');
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-models-'));
  cpSync(join(SHIPPED, NAME), join(models(), NAME), { recursive: true });
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const edit = (from: RegExp, to: string): void => {
  const file = join(models(), NAME, 'model.yaml');
  writeFileSync(file, readFileSync(file, 'utf8').replace(from, to));
};

it('gives the same models the second time, without reading them anew', async () => {
  const first = await cachedModels([models()], cache());
  expect(first).toEqual(await loadModels(models()));
  writeFileSync(cache(), readFileSync(cache(), 'utf8').replace(/"revision":"[^"]*"/, '"revision":"from the file that was kept"'));
  const second = await cachedModels([models()], cache());
  expect(second.models.get(NAME)?.file.revision).toBe('from the file that was kept');
});

it('reads them anew when a file has changed', async () => {
  await cachedModels([models()], cache());
  edit(/^name: .*$/m, 'name: Changed');
  expect((await cachedModels([models()], cache())).models.get(NAME)?.file.name).toBe('Changed');
});

it('tells a fault each time, and keeps nothing while there is one', async () => {
  edit(/^level: .*$/m, 'level: 7');
  for (let i = 0; i < 2; i++) expect((await cachedModels([models()], cache())).problems.map(({ field }) => field)).toEqual(['level']);
  expect(existsSync(cache())).toBe(false);
});

it('does without a file that cannot be written, and takes no notice of one that is damaged', async () => {
  const nowhere = join(dir, 'not-there', 'models.json');
  expect((await cachedModels([models()], nowhere)).models.has(NAME)).toBe(true);
  writeFileSync(cache(), '{"key":');
  expect((await cachedModels([models()], cache())).models.has(NAME)).toBe(true);
});

it('lets a model of a later folder take the place of one with the same id', async () => {
  const own = join(dir, 'own');
  mkdirSync(own);
  cpSync(join(models(), NAME), join(own, NAME), { recursive: true });
  edit(/^name: .*$/m, 'name: Shipped');
  const { models: found } = await cachedModels([models(), own], cache());
  expect([found.size, found.get(NAME)?.file.name === 'Shipped']).toEqual([1, false]);
});
