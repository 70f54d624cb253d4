import { createHash } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import type { AnyEvent } from '../../bench/events/index.ts';
import { openBench } from '../../bench/open-bench.ts';
import type { EventStore, PhotoStore, StoredPhoto } from '../../bench/ports.ts';
import { memoryStore } from '../../bench/testing/memory-store.ts';
import { smallModels } from '../../bench/testing/small-model.ts';
import type { CliParts } from './cli-parts.ts';
import { runCli } from './run-cli.ts';

/** Photos by content, in memory; what does not begin with "picture" is refused. */
function memoryPhotos(): PhotoStore {
  const kept = new Map<string, StoredPhoto>();
  return {
    put: async (name, bytes) => {
      if (!Buffer.from(bytes).toString().startsWith('picture'))
        return { ok: false, code: 'photo-not-a-picture', name, detail: 'it is text' };
      const hash = createHash('sha256').update(bytes).digest('hex');
      const photo = { hash, mediaType: 'image/png', widthPx: 1, heightPx: 1, bytes: bytes.length, takenAt: null };
      const duplicate = kept.has(hash);
      kept.set(hash, photo);
      return { ok: true, photo, duplicate };
    },
    get: async () => null,
    list: async () => [...kept.values()],
    close: async () => undefined,
  };
}

/** A command line whose bench lives in memory and outlasts single commands; the clock counts minutes. */
function commandLine(): {
  salvor: (...argv: string[]) => Promise<Run>;
  files: Map<string, Uint8Array>;
  stores: Map<string, EventStore>;
  parts: CliParts;
} {
  const stores = new Map<string, EventStore>();
  const photos = memoryPhotos();
  const files = new Map<string, Uint8Array>();
  let count = 0;
  const clock = {
    now: () => new Date(Date.UTC(2026, 4, 1, 9, count)),
    newId: () => `019f0000-0000-7000-8000-${String((count += 1)).padStart(12, '0')}`,
  };
  const parts: CliParts = {
    open: async (home) => {
      if (home.endsWith('locked')) throw new Error('permission denied');
      const store = stores.get(home) ?? memoryStore();
      stores.set(home, store);
      const bench = openBench({ store, models: smallModels(), clock, device: 'bench-1', version: '0' });
      return { bench, photos, device: 'bench-1', close: async () => undefined };
    },
    bundle: {
      write: async (events) => Buffer.from(JSON.stringify(events)),
      read: async (bytes) => {
        const text = Buffer.from(bytes).toString();
        if (!text.startsWith('[')) return { ok: false, code: 'bundle-not-a-zip', detail: 'it is not a bundle' };
        return { ok: true, events: JSON.parse(text) as AnyEvent[], photos: [] };
      },
    },
    clock,
    env: { SALVOR_HOME: '/home-of-the-test' },
    readFile: async (path) => files.get(path) ?? Promise.reject(new Error('ENOENT')),
    writeFile: async (path, bytes) => void files.set(path, bytes),
    serve: async (args) => (args.includes('4') ? 3 : 0),
    version: '0',
    out: () => undefined,
    err: () => undefined,
  };
  const salvor = async (...argv: string[]): Promise<Run> => {
    const out: string[] = [];
    const err: string[] = [];
    const code = await runCli(argv, { ...parts, out: (text) => void out.push(text), err: (text) => void err.push(text) });
    return { code, out: out.join('\n'), err: err.join('\n') };
  };
  return { salvor, files, stores, parts };
}

interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

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

describe('the way from buying to a closed sale', () => {
  it('notes a lot, tells the stock numbers, and splits the cost by what the items are expected to be worth', async () => {
    const { code, out } = await buy();
    expect(code).toBe(0);
    expect(out.split('\n')).toEqual(['#1 Blue', '#2 Grey', 'Next: when it has come, salvor add receive 1']);
    const page = await json('list');
    expect((page.rows as { name: string; cost_minor: number }[]).map(({ name, cost_minor }) => [name, cost_minor]).sort()).toEqual([
      ['Blue', 1800],
      ['Grey', 900],
    ]);
  });

  it('shows each piece of evidence in the words of the log, with what next', async () => {
    await buy();
    const received = await salvor('add', 'receive', '1', 'box dented');
    expect(received.out).toMatch(/\nNext: \S/);
    const trial = await salvor('add', 'trial', '#1', 'power', 'fails', '--with', 'good-cell', '--minutes', '2');
    expect(trial).toMatchObject({ code: 0, err: '' });
    await salvor('add', 'claim', '1', 'light=fails', 'bulb:cracked');
    await salvor('add', 'finding', '1', 'switch', 'dirty');
    await salvor('add', 'remedy', '1', 'clean-switch', 'mended', '--minutes', '8');
    await salvor('add', 'opened', '1', 'open', '--minutes', '5');
    const file = await json('show', '1');
    expect((file.log as { kind: string }[]).map(({ kind }) => kind).sort()).toEqual(
      ['claim-made', 'claim-made', 'finding-noted', 'item-received', 'lot-bought', 'opened-to', 'remedy-done', 'trial-done'].sort(),
    );
    expect((file.money as { minutes: number }).minutes).toBe(15);
  });

  it('closes the books of a unit that was proved, graded, listed and sold', async () => {
    await buy('Blue:lamp-1:20');
    const steps = ((await json('show', '1')).proof as { steps: { id: string }[] }).steps;
    for (const { id } of steps) {
      expect((await salvor('show', '1')).out).toMatch(new RegExp(`^  ${id} +open `, 'm'));
      expect((await salvor('add', 'proof', '1', id, 'pass')).code).toBe(0);
    }
    await salvor('add', 'grade', '1', 'B', '--text', 'light scratches');
    await salvor('add', 'listed', '1', '45', 'market hall');
    expect(await salvor('add', 'sold', '1', '45', '--fees', '4.50', '--postage', '3.20')).toMatchObject({ code: 0, err: '' });
    const books = await json('books');
    expect((books.units as { profit_minor: number }[])[0]!.profit_minor).toBe(4500 - 450 - 320 - 2700);
    expect(books.balanced).toBe(true);
    expect((await salvor('books')).out).toContain('10.30 GBP');
  });

  it('takes several steps of proof at once, with their minutes together', async () => {
    await buy('Blue:lamp-1:20');
    const steps = ((await json('show', '1')).proof as { steps: { id: string }[] }).steps.map(({ id }) => id);
    expect((await salvor('add', 'proof', '1', steps.join(', '), 'pass', '--minutes', '12')).code).toBe(0);
    const file = await json('show', '1');
    expect([(file.proof as { ready: boolean }).ready, (file.money as { minutes: number }).minutes]).toEqual([true, 12]);
    expect(await salvor('add', 'proof', '1', `${steps[0]},no-such-step`, 'fail')).toMatchObject({ code: 1 });
    expect(((await json('show', '1')).proof as { ready: boolean }).ready).toBe(true);
  });

  it('moves an assembly from one unit into another', async () => {
    await buy();
    const out = await salvor('add', 'transplant', 'board', '--from', '1', '--name', 'Board of Blue', '--minutes', '12');
    expect(out).toMatchObject({ code: 0, err: '' });
    await salvor('add', 'transplant', 'board', '--from', '2', '--name', 'Board of Grey');
    expect(await salvor('add', 'transplant', 'board', '--to', '2', '--assembly', '3')).toMatchObject({ code: 0, err: '' });
    expect((await salvor('drawer')).out).toContain('Board of Grey');
  });
});

describe('parts', () => {
  beforeEach(async () => void (await buy()));

  it('come out of the first bags of their kind, whatever the bags are called', async () => {
    await salvor('add', 'part', 'bulb-3v', '--count', '2', '--price', '1.00');
    await salvor('add', 'part', 'bulb-3v', '--count', '5', '--price', '5.00');
    expect(await salvor('add', 'used', 'bulb-3v', '1', '3')).toMatchObject({ code: 0, err: '' });
    const bags = (await json('drawer')).bags as { name: string; count: number }[];
    expect(bags.map(({ name, count }) => [name, count])).toEqual([
      ['Bulb 3 V', 0],
      ['Bulb 3 V', 4],
    ]);
    expect(((await json('show', '1')).money as { cost_minor: number }).cost_minor).toBe(1800 + 100 + 100);
  });

  it('are refused when there are too few of them, and nothing is taken', async () => {
    await salvor('add', 'part', 'bulb-3v', '--count', '2', '--price', '1.00');
    expect(await salvor('add', 'used', 'bulb-3v', '1', '3')).toMatchObject({
      code: 1,
      err: expect.stringContaining('holds 2 of Bulb 3 V'),
    });
    expect(await salvor('add', 'used', 'fuse', '1')).toMatchObject({ code: 1, err: expect.stringContaining('no bag "fuse"') });
    expect(await salvor('add', 'used', 'bulb-3v', '1', 'many')).toMatchObject({ code: 2, err: expect.stringContaining('takes a number') });
    expect(((await json('drawer')).bags as { count: number }[])[0]!.count).toBe(2);
  });

  it('are ordered, and lie in the drawer when the order has come', async () => {
    const ordered = await salvor('add', 'order', 'Quay Components', '--parts', 'bulb-3v:4:2.00; wire:1:1.00', '--postage', '1.50');
    expect(ordered).toMatchObject({ code: 0, err: '' });
    expect((await json('books')).on_order_minor).toBe(450);
    const id = /salvor add arrived (\S+)/.exec(ordered.out)![1]!;
    expect((await salvor('drawer')).out).toBe(`On its way: 4 × Bulb 3 V, 1 × wire from Quay Components (${id})`);
    expect(await salvor('add', 'arrived', id, 'box 3')).toMatchObject({ code: 0, err: '' });
    expect((await json('books')).parts_minor).toBe(450);
    expect(await salvor('add', 'order', 'Quay Components', '--parts', 'bulb-3v')).toMatchObject({
      code: 2,
      err: expect.stringContaining('PART:COUNT:PRICE'),
    });
  });
});

it('puts aside an advice that one disagrees with, and gives another', async () => {
  await buy();
  await salvor('add', 'receive', '1');
  const before = (await json('next', '1')) as { id: string };
  expect(await salvor('add', 'declined', '1', 'the meter is away')).toMatchObject({ code: 0, err: '' });
  const after = (await json('next', '1')) as { id: string; declined: { id: string; reason: string }[] };
  expect(after.declined).toEqual([{ id: before.id, reason: 'the meter is away' }]);
  expect(after.id).not.toBe(before.id);
});

describe('a reading', () => {
  beforeEach(async () => void (await buy()));

  it('takes its mode from the model when the typed value does not say', async () => {
    expect((await salvor('add', 'reading', '1', 'cell-v', '3.28')).code).toBe(0);
    const [reading] = (await json('show', '1')).readings as { mode: string; value: number }[];
    expect(reading).toMatchObject({ mode: 'volts', value: 3.28 });
  });

  it('keeps OL as no number, and reads a value below zero', async () => {
    await salvor('add', 'reading', '1', 'cell-v', '-0.02', 'V');
    await salvor('add', 'reading', '1', 'cell-v', 'OL');
    const readings = (await json('show', '1')).readings as { value: number | null }[];
    expect(readings.map(({ value }) => value)).toContain(null);
  });

  it('is refused with how to write it, or by the rule that the model sets', async () => {
    expect(await salvor('add', 'reading', '1', 'cell-v', '12m')).toMatchObject({ code: 2, err: expect.stringContaining('12 mV') });
    expect(await salvor('add', 'reading', '1', 'cell-v', '4k7')).toMatchObject({
      code: 1,
      err: expect.stringContaining('measured in volts'),
    });
    expect(await salvor('add', 'reading', '1', 'nowhere', '3')).toMatchObject({ code: 2, err: expect.stringContaining('--mode') });
  });
});

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
  expect((await salvor('plan')).out).toContain('The pile is empty');
});
