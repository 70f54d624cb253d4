import { expect, test } from 'vitest';
import { openBench } from './open-bench.ts';
import type { EventStore } from './ports.ts';
import { stateText } from './state-text.ts';
import { oneLamp, testEvent, testId, testLog, type Step } from './testing/events.ts';
import { memoryStore } from './testing/memory-store.ts';
import { smallModels } from './testing/small-model.ts';
import { ItemFile, BenchView, BooksView, DrawerView, PileView, ROWS_VERSION, WatchView } from './views/index.ts';

const clock = { now: () => new Date('2026-03-01T10:00:00Z'), newId: () => testId(5000) };
const open = (store: EventStore = memoryStore()) => openBench({ store, models: smallModels(), clock, device: 'bench-1', version: '0.1.0' });
const events = (...steps: readonly Step[]) => testLog(...steps).map(({ event }) => event);
const story = [
  ...oneLamp,
  ['trial-done', { item_id: 'lamp-a', function: 'light', outcome: 'fails', minutes: 1 }],
  ['opened-to', { item_id: 'lamp-a', stage: 'open', minutes: 5 }],
  ['reading-taken', { item_id: 'lamp-a', point: 'cell-v', mode: 'volts', value: 3.7 }],
  ['finding-noted', { item_id: 'lamp-a', place: 'switch', sees: 'dirty' }],
  ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }],
] as const;

test('every answer of the bench fits its published shape', () => {
  const bench = open();
  expect(bench.record(events(...story))).toMatchObject({ ok: true });
  expect(ItemFile.parse(bench.item('#1'))).toMatchObject({
    row: { id: 'lamp-a' },
    model: { id: 'lamp-1', name: 'Pocket lamp', level: 1 },
    stage: 'open',
    slots: [
      { slot: 'battery', holds: 'its-own', item_id: null },
      { slot: 'board', holds: 'nothing', item_id: null },
    ],
    findings: [{ place: 'switch', name: 'Switch', sees: 'dirty', region: null }],
    money: { cost_minor: 600 },
    seq: 7,
  });
  expect(bench.item('#1')!.log.map((line) => line.kind)).toEqual(story.map(([kind]) => kind));
  expect(BenchView.parse(bench.overview())).toMatchObject({ events: 7, items: 2, device: 'bench-1' });
  expect(BooksView.parse(bench.books()).balanced).toBe(true);
  expect(DrawerView.parse(bench.drawer()).assemblies).toMatchObject([{ row: { id: 'board-a' } }]);
  expect(PileView.parse(bench.pile()).plan.map((line) => line.row.id)).toContain('lamp-a');
  expect(WatchView.parse(bench.watch())).toEqual({ listings: [] });
  expect(bench.items({ limit: 10, search: 'lamp' }).rows).toHaveLength(2);
  expect(bench.item('nobody')).toBeNull();
});

test('a unit leaves as working only after the proof that the advice lists', () => {
  const bench = open();
  bench.record(events(...oneLamp));
  const graded = (n: number) => testEvent(n, 'graded', { item_id: 'lamp-a', scale: 'salvor-1', grade: 'B' });
  expect(bench.record([graded(3)])).toMatchObject({ ok: false, code: 'proof-incomplete' });
  const steps = bench.item('lamp-a')!.proof.steps;
  expect(steps.length).toBeGreaterThan(0);
  const passed = steps.map((step, i) => testEvent(10 + i, 'proof-step-done', { item_id: 'lamp-a', step: step.id, outcome: 'pass' }));
  expect(bench.record([...passed, graded(99)])).toMatchObject({ ok: true });
  expect(bench.item('lamp-a')!.row.status).toBe('proved');
});

test('rows that are behind or of an older making are made anew when the bench opens', () => {
  const store = memoryStore();
  open(store).record(events(...oneLamp));
  const rows = store.items({ limit: 10 }).rows;
  store.replaceRows([], { seq: 2, version: ROWS_VERSION - 1 });
  open(store);
  expect(store.items({ limit: 10 }).rows).toEqual(rows);
  store.replaceRows([], { seq: 1, version: ROWS_VERSION });
  open(store);
  expect(store.items({ limit: 10 }).rows).toEqual(rows);
  expect(store.rowsAt()).toEqual({ seq: 2, version: ROWS_VERSION });
});

test('a bench that opens on a log has the state of the bench that wrote it', () => {
  const store = memoryStore();
  const first = open(store);
  first.record(events(...story));
  expect(stateText(open(store).state())).toBe(stateText(first.state()));
});

test('an area drawn on the board is shown with its finding, until it is undone', () => {
  const bench = open();
  const region = {
    side: 'back' as const,
    polygon: [
      [2, 3],
      [14.5, 3],
      [14.5, 11],
      [2, 11],
    ] as [number, number][],
  };
  const finding = ['finding-noted', { item_id: 'lamp-a', place: 'driver', sees: 'residue', region }] as const;
  expect(bench.record(events(...oneLamp, finding))).toMatchObject({ ok: true });
  const file = ItemFile.parse(bench.item('lamp-a'));
  expect(file.findings).toMatchObject([{ place: 'driver', sees: 'residue', region }]);
  expect(file.log.at(-1)!.text).toContain('residue on 12.5 × 8 mm of the back');
  expect(bench.record([testEvent(90, 'correction', { corrects: file.findings[0]!.event_id })])).toMatchObject({ ok: true });
  expect(bench.item('lamp-a')!.findings).toEqual([]);
});
