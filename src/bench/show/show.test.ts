import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { slotContent } from '../slots.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { benchView } from './bench-view.ts';
import { drawerView } from './drawer-view.ts';
import { findItem } from './item-file.ts';
import { modelRows } from './model-rows.ts';

const models = smallModels();
const aboutDrawer = { worksChance: () => 0, wants: [], today: '2026-05-01' };
const fold = (...steps: readonly Step[]) => foldLog(testLog(...steps), models);
const boardOut = ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }] as const;
const boardIn = ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: null, to_item: 'lamp-a' }] as const;
const bulbs = (count: number) =>
  ['part-bought', { bag_id: 'bag', part: 'bulb-3v', name: 'Bulb', count, price_minor: 90, currency: 'GBP', place: 'box 1' }] as const;

describe('the drawer', () => {
  test('shows loose assemblies with where they came from, and not those that sit in a unit or have left', () => {
    const shown = (...steps: readonly Step[]) =>
      drawerView(fold(...oneLamp, ...steps), models, { ...aboutDrawer, worksChance: () => 0.4 }).assemblies;
    expect(shown(boardOut)).toMatchObject([{ row: { id: 'board-a', cost_minor: 1800 }, works_chance: 0.4, from: '#1 Lamp A' }]);
    expect(shown(boardOut, boardIn)).toEqual([]);
    expect(shown(boardOut, ['scrapped', { item_id: 'board-a', reason: 'cracked' }])).toEqual([]);
  });

  test('says that a bag is low when the hungriest remedy cannot be done twice from it', () => {
    const bag = (count: number) => drawerView(fold(bulbs(count)), models, aboutDrawer).bags[0];
    expect(bag(2)).toEqual({
      id: 'bag',
      part: 'bulb-3v',
      name: 'Bulb',
      place: 'box 1',
      count: 2,
      cost_minor: 90,
      low: false,
      layers: [{ count: 2, cost_minor: 90 }],
      pattern: null,
    });
    expect(bag(1)).toMatchObject({ low: true });
  });
});

describe('an item is found', () => {
  const state = fold(...oneLamp, boardOut);

  test('by its id and by its stock number, with or without the mark', () => {
    expect(['lamp-a', '#1', '1', ' #2 '].map((name) => findItem(state, name)?.id)).toEqual(['lamp-a', 'lamp-a', 'lamp-a', 'board-a']);
  });

  test('by nothing else', () => {
    expect(['#3', 'lamp', '', '#'].map((name) => findItem(state, name))).toEqual([null, null, null, null]);
  });
});

describe('a slot holds', () => {
  const content = (...steps: readonly Step[]) => {
    const { items } = fold(...oneLamp, ...steps);
    return slotContent(items.get('lamp-a')!, 'board', items, models.get('lamp-1'));
  };
  const looked = (place: string) => ['finding-noted', { item_id: 'lamp-a', place, sees: 'missing' }] as const;

  test('what came with the unit, nothing once it is out, and its own again when it is back', () => {
    expect(content()).toEqual({ holds: 'its-own', itemId: null });
    expect(content(boardOut)).toEqual({ holds: 'nothing', itemId: null });
    expect(content(boardOut, boardIn)).toEqual({ holds: 'its-own', itemId: 'board-a' });
  });

  test('nothing when it was found missing as a whole, but its own when only one of its blocks is missing', () => {
    expect(content(looked('board')).holds).toBe('nothing');
    expect(content(looked('switch')).holds).toBe('its-own');
    expect(content(looked('switch'), looked('driver')).holds).toBe('nothing');
  });
});

test('a model row counts the units of the model and the points that have a reference', () => {
  const rows = modelRows(fold(...oneLamp, boardOut), models);
  expect(rows.map(({ id, level, units, points, referenced_points }) => [id, level, units, points, referenced_points])).toEqual([
    ['lamp-1', 1, 1, 1, 1],
    ['lamp-2', 1, 0, 1, 0],
    ['lamp-9', 1, 0, 1, 0],
  ]);
});

test('the bench at a glance says whether its currency may still be set, and counts no orphan of the put-away demo', () => {
  const about = { events: 3, version: '0.1.0', device: 'bench-1' };
  expect(benchView(fold(), about)).toMatchObject({ can_set_currency: true, demo: 'none', items: 0, events: 3 });
  const [kind, body] = oneLamp[0];
  const away = fold([kind, body, 'demo'], oneLamp[1], ['demo-put-away', {}], ['item-received', { item_id: 'nobody' }]);
  expect(benchView(away, about)).toMatchObject({ can_set_currency: true, demo: 'put-away', items: 0, orphans: 1 });
  expect(benchView(fold(...oneLamp), about).can_set_currency).toBe(false);
});
