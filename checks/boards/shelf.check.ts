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

/** The same readings; where the work was cut, solutions begin from other ones and differ in their last digits. */
function expectSame(found: Float64Array, wanted: Float64Array): void {
  const far = [...found.keys()].filter((i) => {
    const [a, b] = [found[i]!, wanted[i]!];
    return !Object.is(a, b) && !(Math.abs(a - b) <= 1e-9 + 1e-6 * Math.abs(b));
  });
  expect([found.length, far]).toEqual([wanted.length, []]);
}

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
    expectSame(valuesOf(shelf), first);
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
    expectSame(valuesOf(shelf), first);
    await until(() => kept().length === 1);
    await shelf.close();
  });

  it('stops on wish, keeps what is known, and goes on from there', async () => {
    rmSync(dir, { recursive: true });
    const shelf = open();
    const counts: number[] = [];
    shelf.watch(() => {
      const { done } = shelf.progress()[0]!;
      if (counts.at(-1) !== done) counts.push(done);
      if (counts.length === 1) shelf.stop();
    });
    expect(await shelf.settled(model)).toMatchObject({ stage: 'stopped' });
    const { done, rows } = shelf.progress()[0]!;
    expect(done).toBeLessThan(rows);
    expect(shelf.knowledge(model, [])).toMatchObject({ done });
    shelf.go();
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready', done: rows });
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expectSame(valuesOf(shelf), first);
    await shelf.close();
  });

  it('goes on when it is stopped and told to go on in one breath', async () => {
    rmSync(dir, { recursive: true });
    const shelf = open();
    let isFirst = true;
    shelf.watch(() => {
      if (!isFirst) return;
      isFirst = false;
      shelf.stop();
      shelf.go();
    });
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready' });
    expectSame(valuesOf(shelf), first);
    await shelf.close();
  });

  it('computes leaks too where liquid dried on the board', async () => {
    const polygon = [
      [0, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ] as const;
    const wet = [{ id: 'wet', side: 'front' as const, polygon }];
    const shelf = open();
    const dry = await shelf.settled(model);
    const soaked = await shelf.settled({ ...model, wet });
    expect(soaked).toMatchObject({ stage: 'ready', done: soaked!.rows });
    expect(soaked!.rows).toBeGreaterThan(dry!.rows);
    await shelf.close();
  });

  it('does without a folder that it cannot write to', async () => {
    const file = join(tmpdir(), `salvor-no-folder-${process.pid}`);
    writeFileSync(file, '');
    const shelf = openBoards({ dir: file, compute: true, worker: WORKER, log: (sentence) => troubles.push(sentence) });
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready' });
    expectSame(valuesOf(shelf), first);
    await shelf.close();
    rmSync(file);
    expect(troubles).toEqual([]);
  });

  it.each([
    ['fails', 'throw new Error("on purpose")'],
    ['is killed', 'process.exit(137)'],
  ])('says so when a worker %s, the bench goes on without, and it is tried again on wish', async (_what, program) => {
    troubles.length = 0;
    const empty = mkdtempSync(join(tmpdir(), 'salvor-boards-'));
    const broken = join(empty, 'broken.mjs');
    writeFileSync(broken, program);
    const shelf = openBoards({ dir: empty, compute: true, worker: pathToFileURL(broken), log: (sentence) => troubles.push(sentence) });
    expect(await shelf.settled(model)).toMatchObject({ stage: 'failed', done: 0 });
    expect(shelf.knowledge(model, [])).toBeNull();
    expect(troubles).toEqual([expect.stringContaining('corrie-cp4')]);
    writeFileSync(broken, readFileSync(WORKER, 'utf8').replace('../../bench', new URL('../../bench', WORKER).href));
    shelf.go();
    expect(await shelf.settled(model)).toMatchObject({ stage: 'ready' });
    await shelf.close();
    rmSync(empty, { recursive: true });
  });
});
