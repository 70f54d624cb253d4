import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine, type Run } from './testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
const salvor = (...argv: string[]): Promise<Run> => line.salvor(...argv);
const json = async (...argv: string[]): Promise<Record<string, unknown>> =>
  JSON.parse((await salvor(...argv, '--json')).out) as Record<string, unknown>;

beforeEach(() => void (line = commandLine()));

const buy = (items = 'Blue:lamp-1:20; Grey:lamp-1:10'): Promise<Run> =>
  salvor(
    'add',
    'lot',
    '--title',
    'Two dead lamps',
    '--seller',
    'Harbour Clearance',
    '--price',
    '24',
    '--postage',
    '3.00',
    '--items',
    items,
  );

describe('photos', () => {
  it('are all hung on the item, or none of them', async () => {
    await buy();
    line.files.set('front.png', Buffer.from('picture of the front'));
    line.files.set('back.png', Buffer.from('picture of the back'));
    line.files.set('notes.txt', Buffer.from('no picture'));
    expect(await salvor('add', 'photo', '1', 'front.png', 'notes.txt')).toMatchObject({
      code: 2,
      err: expect.stringContaining('notes.txt is not a picture'),
    });
    expect((await json('show', '1')).photos).toEqual([]);
    expect((await salvor('add', 'photo', '1', 'front.png', 'back.png', '--side', 'front')).code).toBe(0);
    expect((await json('show', '1')).photos).toHaveLength(2);
    expect(await salvor('add', 'photo', '1', 'gone.png')).toMatchObject({
      code: 2,
      err: expect.stringContaining('gone.png cannot be read'),
    });
  });
});

describe('undo', () => {
  it('takes back the last thing, then the one before, and brings one back by its correction', async () => {
    await buy();
    await salvor('add', 'note', 'first', '--item', '1');
    await salvor('add', 'note', 'second', '--item', '1');
    await salvor('undo');
    const { out } = await salvor('undo');
    expect(out).toMatch(/^Taken back: .*first/);
    const standing = async (): Promise<string[]> =>
      ((await json('show', '1')).log as { kind: string; corrected: boolean; text: string }[])
        .filter(({ kind, corrected }) => kind === 'note-written' && !corrected)
        .map(({ text }) => text);
    expect(await standing()).toEqual([]);
    await salvor('undo', /salvor undo (\S+)/.exec(out)![1]!);
    expect((await standing()).join()).toContain('first');
  });

  it('says so when nothing is left', async () => {
    expect(await salvor('undo')).toMatchObject({ code: 1, err: expect.stringContaining('Nothing is left to undo') });
  });
});

describe('a whole bench', () => {
  it('goes into a file and comes out the same on another bench', async () => {
    await buy();
    await salvor('add', 'note', 'to travel', '--item', '1');
    expect((await salvor('export', 'bench.zip')).code).toBe(0);
    expect(await salvor('import', 'bench.zip', '--home', '/fresh')).toMatchObject({ code: 0, err: '' });
    expect(await json('show', '1', '--home', '/fresh')).toEqual(await json('show', '1'));
  });

  it('goes only into an empty bench, and only when it is one', async () => {
    await buy();
    await salvor('export', 'bench.zip');
    expect(await salvor('import', 'bench.zip')).toMatchObject({ code: 1, err: expect.stringContaining('only into an empty one') });
    line.files.set('letter.txt', Buffer.from('dear'));
    expect(await salvor('import', 'letter.txt', '--home', '/fresh')).toMatchObject({
      code: 2,
      err: expect.stringContaining('not a bundle'),
    });
    expect(await salvor('import', 'gone.zip', '--home', '/fresh')).toMatchObject({ code: 2 });
  });
});

describe('exit codes', () => {
  it('are 0 for help and version, 2 for what is not a command', async () => {
    expect((await salvor('--help')).code).toBe(0);
    expect((await salvor('add', 'trial', '--help')).out).toContain('Example: salvor add trial');
    expect(await salvor('--version')).toMatchObject({ code: 0, out: '0' });
    expect((await salvor('frobnicate')).code).toBe(2);
    expect((await salvor('add', 'trial', '1')).code).toBe(2);
    expect((await salvor('list', '--frob')).code).toBe(2);
  });

  it('are 1 where a rule refuses, 2 where an input does not fit, 3 where the bench cannot be opened', async () => {
    await buy();
    expect(await salvor('add', 'sold', '1', '45')).toMatchObject({ code: 1, err: expect.stringContaining('proof') });
    expect(await salvor('add', 'trial', '1', 'power', 'perhaps')).toMatchObject({ code: 2, err: expect.stringContaining('body.outcome') });
    expect(await salvor('show', '77')).toMatchObject({ code: 2, err: expect.stringContaining('No item is called "77"') });
    expect(await salvor('list', '--home', '/locked')).toMatchObject({ code: 3, err: expect.stringContaining('permission denied') });
    expect((await salvor('serve', '--port', '4')).code).toBe(3);
    expect((await salvor('serve')).code).toBe(0);
  });

  it('come with the problem as an object when answers are wanted as objects', async () => {
    const { err } = await salvor('show', '77', '--json');
    expect(JSON.parse(err)).toMatchObject({ code: 'no-such-item', where: 'ITEM' });
  });
});

describe('every command below add', () => {
  it('has an example that begins with its own name', async () => {
    const { out } = await salvor('add', '--help');
    const names = [...out.matchAll(/^ {2}([a-z]+) /gm)].map(([, name]) => name!).filter((name) => name !== 'help');
    expect(names.length).toBeGreaterThan(15);
    for (const name of names) expect((await salvor('add', name, '--help')).out).toContain(`Example: salvor add ${name}`);
  });
});

it('weighs a listing without storing anything', async () => {
  const before = await json('init');
  const { code, out } = await salvor(
    'scout',
    'lamp-1',
    '--price',
    '9.50',
    '--seller',
    'Harbour Clearance',
    '--says',
    'power=fails',
    'untested',
  );
  expect([code, /^(BUY|HAGGLE|LEAVE): worth at most/.test(out)]).toEqual([0, true]);
  expect(await json('init')).toEqual(before);
  expect(await salvor('scout', 'lamp-1', '--price', 'cheap')).toMatchObject({
    code: 2,
    err: expect.stringContaining('"cheap" is not an amount'),
  });
  expect(await salvor('scout', 'lamp-1', '--price', '5', '--count', 'many')).toMatchObject({
    code: 2,
    err: expect.stringContaining('count'),
  });
});

it('sets up a bench, and shows models by the names that commands take', async () => {
  expect(await json('init', '--currency', 'EUR', '--name', 'Attic bench', '--hour-value', '12')).toMatchObject({
    name: 'Attic bench',
    currency: 'EUR',
    hour_value_minor: 1200,
  });
  expect(await json('init', '--fee-percent', '9.5', '--postage-out', '3.20')).toMatchObject({
    hour_value_minor: 1200,
    fee_percent: 9.5,
    postage_out_minor: 320,
  });
  expect(await salvor('init', '--fee-percent', 'some')).toMatchObject({ code: 2, err: expect.stringContaining('takes a number') });
  expect((await salvor('models')).out).toContain('lamp-1');
  expect((await salvor('models', 'lamp-1')).out).toMatch(/Functions to try[\s\S]*power[\s\S]*Points to measure[\s\S]*cell-v/);
  expect((await salvor('models', 'lamp-3')).code).toBe(2);
  expect((await salvor('plan')).out).toContain('Nothing waits for a plan');
});

it('reads the words of a listing, and what was typed goes before what was read', async () => {
  const words = 'The light does not work. I think the power is fine.';
  const read = await salvor('scout', 'lamp-1', '--price', '5', '--text', words);
  expect(read.out).toContain('Read light=fails in "light does not work" (works, not)');
  expect(read.out).toMatch(/Read power=works in "power is fine" \(works\); it does not count/);
  const outlook = async (...more: string[]) =>
    JSON.parse((await salvor('scout', 'lamp-1', '--price', '5', '--json', ...more)).out).value_minor;
  expect(await outlook('--text', words)).toBe(await outlook('--says', 'light=fails'));
  expect(await outlook('--text', words, '--says', 'light=works')).toBe(await outlook('--says', 'light=works'));
  expect(await outlook('--says', 'light=works')).not.toBe(await outlook('--says', 'light=fails'));
});
