import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Bench } from '../../src/bench/bench.ts';
import { isForeign, parseEvent } from '../../src/bench/events/index.ts';
import { Status } from '../../src/bench/views/index.ts';
import { readFolder } from '../../src/edges/bundle/index.ts';
import { DEMO, demoEvents, emptyBench, ofKind, ROOT } from './demo-bench.ts';

const MOST_BYTES = 12e6;
const MOST_PHOTO_BYTES = 250_000;

const events = demoEvents();
let bench: Bench;

beforeAll(async () => {
  bench = await emptyBench();
  expect(bench.record(events)).toMatchObject({ ok: true });
});

describe('the files of the demo', () => {
  test('are what the story gives, byte for byte', () => {
    const made = spawnSync(process.execPath, [join(ROOT, 'scripts/make-demo.mjs'), '--check'], { encoding: 'utf8' });
    expect(made.stdout + made.stderr).toContain('up to date');
    expect(made.status).toBe(0);
  });

  test('are a bundle as the bench reads it', async () => {
    const read = await readFolder(DEMO);
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.events.length).toBe(events.length);
  });

  test('hold each photo that an event names, under its hash, and no other', () => {
    const named = new Set(ofKind(events, 'photo-taken').map((event) => `${event.body.photo}.jpg`));
    const kept = readdirSync(join(DEMO, 'photos'));
    expect(kept.sort()).toEqual([...named].sort());
    for (const name of kept) {
      const bytes = readFileSync(join(DEMO, 'photos', name));
      expect(`${createHash('sha256').update(bytes).digest('hex')}.jpg`).toBe(name);
      expect(bytes.length).toBeLessThanOrEqual(MOST_PHOTO_BYTES);
    }
    expect(kept.length).toBeGreaterThanOrEqual(16);
  });

  test('stay small enough to come with every checkout', () => {
    const sizes = readdirSync(DEMO, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => readFileSync(join(entry.parentPath, entry.name)).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(MOST_BYTES);
  });
});

describe('the story of the demo', () => {
  test('is made of events of this version by the device "demo", in the order of their ids', () => {
    for (const event of events) {
      const parsed = parseEvent(event);
      expect(parsed.ok && isForeign(parsed.event)).toBe(false);
      expect(parsed).toMatchObject({ ok: true, event: { device: 'demo' } });
    }
    expect(events.map((event) => event.id)).toEqual(events.map((event) => event.id).sort());
    expect(bench.state().orphans).toEqual([]);
  });

  test('takes each road: cleaned, reflowed, part replaced, wire bridged', () => {
    const kinds = ofKind(events, 'remedy-done').map(({ body }) => {
      const model = bench.model(bench.state().items.get(body.item_id)!.modelId)!;
      return model.file.remedies.find((remedy) => remedy.id === body.remedy)!.kind;
    });
    for (const kind of ['clean', 'reflow', 'replace', 'bridge-with-wire']) expect(kinds).toContain(kind);
  });

  test('takes each road: a board transplanted into a unit that was sold as working', () => {
    const into = ofKind(events, 'transplant-done').filter(({ body }) => body.slot === 'board' && body.to_item !== null);
    const sold = into.map(({ body }) => bench.state().items.get(body.to_item!)!.sale?.as);
    expect(sold).toContain('working');
  });

  test('takes each road: a unit parted out, its assemblies in others and in the drawer', () => {
    const scrapped = [...bench.state().items.values()].filter((item) => item.kind === 'unit' && item.status === 'scrapped');
    const from = new Set(ofKind(events, 'transplant-done').map(({ body }) => body.from_item));
    expect(scrapped.some((unit) => from.has(unit.id))).toBe(true);
  });

  test('weighs listings that were not bought, with a reason, and leaves one open', () => {
    const fates = bench.watch().listings.map((listing) => listing.fate);
    expect(fates.filter((fate) => fate === 'dropped').length).toBeGreaterThanOrEqual(1);
    expect(fates.filter((fate) => fate === 'open')).toHaveLength(1);
    for (const { fate, reason } of bench.watch().listings) expect(fate === 'dropped' ? reason : 'none needed').not.toBe('');
  });

  test('buys fourteen units in three lots from three sellers, the less honest of whom is known for it', () => {
    const { items, lots } = bench.state();
    expect([...items.values()].filter((item) => item.kind === 'unit')).toHaveLength(14);
    expect(new Set([...lots.values()].map((lot) => lot.seller)).size).toBe(3);
    const honesty = new Map(bench.watch().listings.map(({ seller, outlook }) => [seller, outlook.honesty.chance]));
    expect(honesty.get('Quick Lots')).toBeLessThan(honesty.get('Harbour Lane Clearance')!);
  });

  test('has an item in every status', () => {
    const seen = new Set([...bench.state().items.values()].map((item) => item.status));
    expect([...Status.options].filter((status) => !seen.has(status))).toEqual([]);
  });

  test('leaves units on the bench that wait for different things', () => {
    const next = (id: string) => bench.item(id)!.advice.do;
    expect(next('corrie-4')).toBe('receive');
    expect(next('tern-8')).toBe('check');
    expect(next('player-1')).toBe('check');
    expect(next('corrie-3')).toBe('prove');
    expect(next('tern-2')).toBe('list');
    expect(['leave', 'part-out']).toContain(next('tern-9'));
  });

  test('opens a unit step by step, with screws that are missing and foreign, and the sign of an earlier hand', () => {
    const opening = bench.opening('tern-8', 'stage:board-out')!;
    expect(opening).toMatchObject({ stage: 'board-out', steps: [], exact: true });
    expect(opening.done.length).toBeGreaterThan(5);
    expect(opening.fasteners.sets.find(({ set }) => set === 'back-screws')).toMatchObject({ out: 4, foreign: 1, on_mat: 4 });
    expect(opening.fasteners.shopping).toMatchObject([{ set: 'back-screws', count: 2 }]);
    const seen = bench.item('tern-8')!.findings.map(({ place, sees }) => `${place}: ${sees}`);
    expect(seen).toEqual(expect.arrayContaining(['back-screws: missing', 'back-screws: opened-before', 'charge-control: opened-before']));
  });

  test('closes a unit with all that came out, and has learned how long its steps take', () => {
    const { fasteners, steps, stage } = bench.opening('corrie-3', 'stage:open')!;
    expect({ stage, even: fasteners.even, whole: fasteners.whole }).toEqual({ stage: 'closed', even: true, whole: true });
    expect(steps.some(({ times, minutes, model_minutes: usual }) => times > 0 && minutes !== usual)).toBe(true);
  });

  test('has an order under way for what a unit on the bench needs next', () => {
    const ordered = bench
      .drawer()
      .orders.filter((order) => order.arrived_at === null)
      .flatMap((order) => order.lines.map((line) => line.part));
    const { advice } = bench.item('corrie-1')!;
    expect(advice.remedy?.parts.some(({ part }) => ordered.includes(part))).toBe(true);
  });
});

describe('the books of the demo', () => {
  test('balance event by event, with a profit, a loss and a return', () => {
    const books = bench.books();
    expect(books.balanced).toBe(true);
    const profits = books.units.filter(({ row }) => row.status === 'sold').map((unit) => unit.profit_minor!);
    expect(Math.max(...profits)).toBeGreaterThan(0);
    expect(Math.min(...profits)).toBeLessThan(0);
    expect(ofKind(events, 'returned')).toHaveLength(1);
  });

  test('hold the cash that the events tell of: what came in less what was paid', () => {
    const sum = (amounts: readonly number[]): number => amounts.reduce((total, amount) => total + amount, 0);
    const paid = [
      ...ofKind(events, 'lot-bought').map(({ body }) => body.price_minor + body.postage_minor + body.tax_minor),
      ...ofKind(events, 'part-bought').map(({ body }) => body.price_minor),
      ...ofKind(events, 'order-placed').map(({ body }) => body.postage_minor + sum(body.lines.map((line) => line.price_minor))),
      ...ofKind(events, 'returned').map(({ body }) => body.refund_minor + body.postage_minor - body.fees_back_minor),
    ];
    const sales = ofKind(events, 'sold').map(
      ({ body }) => body.price_minor + body.postage_charged_minor - body.fees_minor - body.postage_minor,
    );
    expect(bench.books().cash_minor).toBe(sum(sales) - sum(paid));
  });
});
