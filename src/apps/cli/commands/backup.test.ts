import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
beforeEach(async () => {
  line = commandLine();
  await line.salvor('init', '--currency', 'GBP');
});

describe('salvor backup', () => {
  it('makes a backup, says that it was tried, and that it lies on the same disk', async () => {
    const { code, out } = await line.salvor('backup');
    expect(code).toBe(0);
    expect(out).toMatch(/^1 event and 0 photos are in backup-\S+ in \/bench\/backups\.\nTried: it opens, and gives the same bench/);
    expect(out).toContain('choose another one with --folder');
  });

  it('remembers a folder and whether one is made at night', async () => {
    expect((await line.salvor('backup', '--folder', '/stick', '--nightly', 'off')).out).not.toContain('same disk');
    expect((await line.salvor('backup', '--nightly', 'on')).out).toBe('A backup goes into /stick each night while the server runs.');
    expect((await line.salvor('backup', '--nightly', 'off')).out).toContain('No backup is made at night.');
    expect((await line.salvor('backup', '--nightly', 'maybe')).code).toBe(2);
    const unfit = await line.salvor('backup', '--folder', '/nowhere');
    expect([unfit.code, unfit.err]).toEqual([3, expect.stringContaining('/nowhere: there is no such folder. Choose a folder')]);
  });

  it('lists what there is and tries one', async () => {
    await line.salvor('backup');
    const listed = await line.salvor('backup', '--list');
    expect(listed.out).toMatch(/events.*\n.*\n1 backup in \/bench\/backups\.$/);
    const name = /backup-\S+/.exec(listed.out)![0];
    expect((await line.salvor('backup', '--try', name)).out).toContain('It holds: 1 event');
    expect(await line.salvor('backup', '--try', 'other')).toMatchObject({ code: 3, err: expect.stringContaining('no backup other') });
  });
});

describe('salvor restore', () => {
  it('brings a backup back into an empty bench only', async () => {
    await line.salvor('backup');
    const name = /backup-\S+/.exec((await line.salvor('backup', '--list')).out)![0];
    expect(await line.salvor('restore', name)).toMatchObject({ code: 1, err: expect.stringContaining('already holds 1 events') });
    expect((await line.salvor('--home', '/fresh', 'restore', name)).out).toBe('Brought back: 1 event and 0 photos.\nNext: salvor plan');
    expect((await line.salvor('--home', '/fresh2', 'restore', 'gone')).code).toBe(3);
  });
});
