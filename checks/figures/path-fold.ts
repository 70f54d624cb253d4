import { join } from 'node:path';
import type { Stored } from '../../src/bench/events/index.ts';
import type { EventStore } from '../../src/bench/ports.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';
import { foldLog } from '../../src/bench/fold/index.ts';
import { smallModels } from '../../src/bench/testing/small-model.ts';
import { testEvent, type Step } from '../../src/bench/testing/events.ts';
import type { RandomStream } from '../../src/core/numeric/index.ts';
import { temporaryHome } from './server-process.ts';

const UNITS_PER_LOT = 5;

const PAGE = 5000;

/** Seconds from a store that holds so many events to the state, as every start of the bench goes: read, checked as far as is needed, folded. */
export function foldSeconds(count: number, random: RandomStream): number {
  const { home, remove } = temporaryHome();
  const store = openSqliteStore(join(home, 'salvor.sqlite'));
  try {
    fill(store, count, random);
    const models = smallModels();
    const started = performance.now();
    const log: Stored[] = [];
    while (log.length < count) log.push(...store.read(log.length, PAGE));
    const state = foldLog(log, models);
    const seconds = (performance.now() - started) / 1000;
    if (state.seq !== count || state.orphans.length > 0) throw new Error('the fold lost something');
    return seconds;
  } finally {
    store.close();
    remove();
  }
}

function fill(store: EventStore, count: number, random: RandomStream): void {
  const events = steps(count, random).map(([kind, body], i) => testEvent(i + 1, kind, body as never));
  for (let at = 0; at < count; at += PAGE) store.append(events.slice(at, at + PAGE), { put: [], remove: [], version: 0 });
}

/** Lots of lamps, each received, claimed, tried, seen, measured, mended, proved and sold, over and over: about a dozen events a unit. */
function steps(count: number, random: RandomStream): Step[] {
  const all: Step[] = [];
  for (let lot = 0; all.length < count; lot++) all.push(...lotSteps(lot, random));
  return all.slice(0, count);
}

function lotSteps(lot: number, random: RandomStream): Step[] {
  const ids = Array.from({ length: UNITS_PER_LOT }, (_, i) => `lamp-${lot}-${i}`);
  const items = ids.map((item_id) => ({
    item_id,
    name: `Lamp ${item_id}`,
    model_id: 'lamp-1',
    expected_value_minor: 2000 + Math.floor(random() * 2000),
  }));
  const price_minor = 5000 + Math.floor(random() * 5000);
  const bought: Step = [
    'lot-bought',
    { lot_id: `lot-${lot}`, title: `Lot ${lot}`, seller: 'marsh-lane', price_minor, currency: 'GBP', items },
  ];
  return [bought, ...ids.flatMap((id) => unitSteps(id, random))];
}

function unitSteps(item_id: string, random: RandomStream): Step[] {
  return [
    ['item-received', { item_id }],
    ['claim-made', { item_id, claim: { about: 'function', function: 'light', says: 'fails' } }],
    ['trial-done', { item_id, function: 'light', outcome: random() < 0.5 ? 'fails' : 'works' }],
    ['finding-noted', { item_id, place: 'switch', sees: 'dirty', minutes: 2 }],
    ['reading-taken', { item_id, point: 'cell-v', mode: 'volts', value: 3 + random() }],
    ['note-written', { item_id, text: 'the seal is broken' }],
    ['remedy-done', { item_id, remedy: 'clean-switch', minutes: 10, outcome: 'mended' }],
    ['trial-done', { item_id, function: 'light', outcome: 'works', with: ['good-cell'] }],
    ['time-clocked', { item_id, minutes: 4, task: 'cleaning' }],
    ['proof-step-done', { item_id, step: 'light', outcome: 'pass' }],
    ['graded', { item_id, scale: 'salvor-1', grade: 'B' }],
    ['listed', { item_id, price_minor: 4000, place: 'the stall' }],
    ['sold', { item_id, as: 'working', price_minor: 3900, fees_minor: 390, postage_minor: 300, currency: 'GBP' }],
  ];
}
