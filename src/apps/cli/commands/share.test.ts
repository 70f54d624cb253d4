import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
beforeEach(() => void (line = commandLine()));

const sheet = (numbers: object[]): Uint8Array =>
  new TextEncoder().encode(JSON.stringify({ format: 'salvor-learned', version: 1, model_id: 'lamp-1', model_name: 'Lamp', numbers }));
const often = { about: 'fault-rate', of: 'bulb-open', mean: 0.9, jobs: 20 };

describe('learned numbers as files', () => {
  it('are taken in at a weight, shown, and taken back by undo', async () => {
    line.files.set('friend.json', sheet([often]));
    const taken = await line.salvor('take', 'friend.json', '--from', 'a friend', '--weight', '0.5');
    expect(taken).toMatchObject({ code: 0 });
    expect((await line.salvor('learned')).out).toMatch(/bulb open, Pocket lamp +20 % +\d\d %/);
    await line.salvor('undo');
    expect((await line.salvor('learned')).out).not.toContain('bulb open');
  });

  it('are written without anything while nothing was learned, and such a file is refused where it is taken', async () => {
    expect((await line.salvor('share', 'lamp-1', 'own.json')).out).toContain('0 learned numbers of Pocket lamp');
    expect(await line.salvor('take', 'own.json')).toMatchObject({ code: 1 });
    expect(await line.salvor('share', 'no-such', 'own.json')).toMatchObject({ code: 2 });
  });

  it('are refused whole for one number that cannot be', async () => {
    line.files.set('bad.json', sheet([often, { ...often, of: 'cell-flat', mean: 7 }]));
    const { code, err } = await line.salvor('take', 'bad.json');
    expect(code).toBe(2);
    expect(err).toContain('must be a share from 0 to 1');
    expect((await line.salvor('learned')).out).toContain('Nothing was learned yet');
  });
});
