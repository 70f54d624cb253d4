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

  it('come late, in parts, and in the end not at all', async () => {
    const ordered = await salvor('add', 'order', 'Quay Components', '--parts', 'bulb-3v:4:2.00; wire:1:1.00', '--due', '2026-04-30');
    const id = /salvor add arrived (\S+)/.exec(ordered.out)![1]!;
    expect((await salvor('drawer')).out).toBe(`Late: 0 of 4 × Bulb 3 V, 0 of 1 × wire from Quay Components, due 2026-04-30 (${id})`);
    expect(await salvor('add', 'arrived', id, '--counts', '3;0')).toMatchObject({ code: 2, err: expect.stringContaining('such as 2,0') });
    expect(await salvor('add', 'arrived', id, '--counts', '5,0')).toMatchObject({ code: 1, err: expect.stringContaining('Only 4 ×') });
    expect(await salvor('add', 'arrived', id, 'box 3', '--counts', '3,0')).toMatchObject({ code: 0, err: '' });
    expect(await json('books')).toMatchObject({ parts_minor: 150, on_order_minor: 150 });
    expect(await salvor('add', 'cancelled', id, '--refund', '1.20', '--reason', 'sold out')).toMatchObject({ code: 0, err: '' });
    expect(await json('books')).toMatchObject({ parts_minor: 150, on_order_minor: 0, cash_minor: -2880, balanced: true });
    expect((await salvor('drawer')).out).toContain('Cancelled: 3 of 4 × Bulb 3 V, 0 of 1 × wire');
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
