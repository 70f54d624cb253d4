import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BoardShelf } from '../../src/bench/boards/index.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { openBoards } from '../../src/edges/boards/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

/** The program of the worker as it is built; `npm test` builds first. */
const WORKER = pathToFileURL(join(import.meta.dirname, '../../dist/edges/boards/compute.mjs'));

let model: Model;
const dir = mkdtempSync(join(tmpdir(), 'salvor-boards-'));
const troubles: string[] = [];
const open = (compute = true, worker = WORKER): BoardShelf =>
  openBoards({ dir, compute, worker, log: (sentence) => troubles.push(sentence) });
const kept = (): string[] => readdirSync(dir).filter((name) => name.endsWith('.boards'));

beforeAll(async () => {
  model = (await loadModels(join(import.meta.dirname, '../../models'))).models.get('corrie-cp4')!;
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const valuesOf = (shelf: BoardShelf) => shelf.knowledge(model, [])!.baseline.kernels.dictionary.values;

async function until(holds: () => boolean): Promise<void> {
  for (let i = 0; i < 3000 && !holds(); i++) await setTimeout(20);
  expect(holds()).toBe(true);
}

describe('the shelf of computed circuits', () => {
  let first: Float64Array;

  it('has nothing to say of a model without a circuit, and begins with the first question of one that has it', async () => {
    const shelf = open();
    const { circuit: _, ...plain } = model;
    expect(shelf.knowledge(plain, [])).toBeNull();
    expect(await shelf.settled(plain)).toBeNull();
    expect(shelf.knowledge(model, [])).toBeNull();
    let told = 0;
    shelf.watch(() => (told += 1));
    expect(await shelf.settled(model)).toMatchObject({ modelId: 'corrie-cp4', stage: 'ready' });
    expect(told).toBeGreaterThan(2);
    first = valuesOf(shelf).slice();
    expect(first.some(Number.isNaN)).toBe(false);
    await until(() => kept().length === 1);
    await shelf.close();
  });

  it('gives the same numbers again without computing, also to a program that does not compute', async () => {
    const shelf = open(false);
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready' });
    expect(valuesOf(shelf)).toEqual(first);
    await shelf.close();
  });

  it.each([
    ['cut short', (file: string) => truncateSync(file, 5000)],
    [
      'with a byte turned',
      (file: string) =>
        writeFileSync(
          file,
          readFileSync(file).map((byte, i) => (i === 9000 ? byte ^ 1 : byte)),
        ),
    ],
    ['that is something else', (file: string) => writeFileSync(file, 'not numbers')],
  ])('computes anew what it finds %s', async (_what, spoil) => {
    spoil(join(dir, kept()[0]!));
    const shelf = open();
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready' });
    expect(valuesOf(shelf)).toEqual(first);
    await until(() => kept().length === 1);
    await shelf.close();
  });

  it('stops on wish and goes on', async () => {
    rmSync(dir, { recursive: true });
    const shelf = open();
    shelf.knowledge(model, []);
    shelf.stop();
    await until(() => shelf.progress()[0]!.stage === 'stopped' || shelf.progress()[0]!.stage === 'waiting');
    shelf.go();
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready' });
    expect(valuesOf(shelf)).toEqual(first);
    await shelf.close();
  });

  it('says what went wrong in a worker, and the bench goes on without', async () => {
    rmSync(dir, { recursive: true });
    const broken = join(tmpdir(), `salvor-broken-${process.pid}.mjs`);
    writeFileSync(broken, 'throw new Error("on purpose")');
    const shelf = open(true, pathToFileURL(broken));
    expect(await shelf.settled(model)).toMatchObject({ stage: 'failed', done: 0 });
    expect(shelf.knowledge(model, [])).toBeNull();
    expect(troubles).toEqual([expect.stringContaining('corrie-cp4')]);
    await shelf.close();
    rmSync(broken);
  });
});
