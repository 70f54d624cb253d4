import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { Id } from '../bench/events/index.ts';
import { openHome } from './home.ts';

let dir = '';
beforeEach(() => void (dir = mkdtempSync(join(tmpdir(), 'salvor-home-'))));
afterEach(() => rmSync(dir, { recursive: true, force: true }));

it('makes the folders of a bench, and a name for the device that stays and fits an event', () => {
  const home = openHome(join(dir, 'deep', 'bench'));
  expect([existsSync(home.photos), existsSync(home.models)]).toEqual([true, true]);
  expect(Id.safeParse(home.device).success).toBe(true);
  expect(openHome(join(dir, 'deep', 'bench'))).toEqual(home);
});

it('says what the disk says where the folder cannot be made', () => {
  writeFileSync(join(dir, 'a-file'), '');
  expect(() => openHome(join(dir, 'a-file'))).toThrowError(/ENOTDIR|EEXIST/);
});
