import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { writeWhole } from './write-whole.ts';

let dir: string;
beforeEach(() => (dir = mkdtempSync(join(tmpdir(), 'salvor-files-'))));
afterEach(() => rmSync(dir, { recursive: true, force: true }));

it('puts a file in its place, in folders that it makes, over an older one', async () => {
  const path = join(dir, 'a/b/c.txt');
  await writeWhole(path, 'old');
  await writeWhole(path, Buffer.from('new'));
  expect(readFileSync(path, 'utf8')).toBe('new');
  expect(readdirSync(join(dir, 'a/b'))).toEqual(['c.txt']);
});

it('leaves nothing aside when the file cannot be put there', async () => {
  mkdirSync(join(dir, 'taken'));
  await expect(writeWhole(join(dir, 'taken'), 'x')).rejects.toThrow(/EISDIR|ENOTEMPTY|EPERM|EEXIST/);
  expect(readdirSync(dir)).toEqual(['taken']);
});
