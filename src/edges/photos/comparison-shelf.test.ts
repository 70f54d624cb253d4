import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { finding, squareAt } from '../../bench/eyes/testing/scripted-comparer.ts';
import { openComparisonShelf } from './comparison-shelf.ts';

let dir: string;
beforeEach(() => (dir = mkdtempSync(join(tmpdir(), 'salvor-comparisons-'))));
afterEach(() => rmSync(dir, { recursive: true, force: true }));

it('keeps what was found and the picture by what was compared, and outlives the program', async () => {
  const result = finding(squareAt(10, 20));
  if (!result.ok) throw new Error(result.code);
  const { laid, ...kept } = result;
  const shelf = openComparisonShelf(dir);
  const key = shelf.keyOf('these two');
  expect(await shelf.get(key)).toBeNull();
  await shelf.put(key, kept, laid);
  const later = openComparisonShelf(dir);
  expect(later.keyOf('these two')).toBe(key);
  expect(later.keyOf('two others')).not.toBe(key);
  expect(await later.get(key)).toEqual(kept);
  expect([...(await later.laid(key))!]).toEqual([...laid]);
});

it('looks for nothing outside of its folder', async () => {
  const shelf = openComparisonShelf(dir);
  expect(await shelf.get('../../etc/passwd')).toBeNull();
  expect(await shelf.laid('../x')).toBeNull();
});
