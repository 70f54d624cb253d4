import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { labelsOf, layoutLabels, LABEL_SHEETS, sheetOf } from './index.ts';

const models = smallModels();
const bag = (bag_id: string, place: string): Step => [
  'part-bought',
  { bag_id, part: 'bulb-3v', name: `Bulbs in ${bag_id}`, count: 1, price_minor: 90, currency: 'GBP', place },
];
const emptied: Step = ['part-used', { bag_id: 'empty', item_id: 'lamp-a', count: 1 }];
const state = foldLog(
  testLog(
    ...oneLamp,
    bag('full', 'box 3'),
    bag('empty', ''),
    emptied,
    ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }],
    ['scrapped', { item_id: 'lamp-a', reason: 'burnt' }],
  ),
  models,
);
const wanted = { items: [], bags: [], address: 'http://127.0.0.1:4780' } as const;
const made = (more: object) => labelsOf(state, (id) => models.get(id) ?? null, { ...wanted, ...more });

describe('labels', () => {
  test('say what a thing is, and open it', () => {
    expect(made({ items: ['1', 'board-a'], bags: ['full'] })).toEqual({
      ok: true,
      labels: [
        { link: 'http://127.0.0.1:4780/bench/lamp-a', title: '#1', lines: ['Lamp A', 'Pocket lamp'] },
        { link: 'http://127.0.0.1:4780/bench/board-a', title: '#2', lines: [expect.any(String), 'Pocket lamp'] },
        { link: 'http://127.0.0.1:4780/drawer/bag/full', title: 'Bulbs in full', lines: ['bulb-3v', 'box 3'] },
      ],
    });
  });

  test('of all are of what is still at hand', () => {
    const all = made({ items: 'all', bags: 'all' });
    expect(all.ok && all.labels.map(({ title }) => title)).toEqual(['#2', 'Bulbs in full']);
  });

  test('are not made of what is not there', () => {
    expect(made({ items: ['9'] })).toEqual({ ok: false, code: 'no-such-item', name: '9' });
    expect(made({ bags: ['lost'] })).toEqual({ ok: false, code: 'no-such-bag', name: 'lost' });
  });

  test('begin where the sheet is not used yet, and go on to the next one', () => {
    const sheet = sheetOf('letter-10')!;
    const labels = Array.from({ length: 12 }, (_, i) => ({ link: `l${i}`, title: '', lines: [] }));
    const { pages } = layoutLabels(labels, sheet, 9);
    expect(pages.map((page) => page.map(({ link }) => link))).toEqual([['l0'], labels.slice(1, 11).map(({ link }) => link), ['l11']]);
    expect(pages[0]![0]!.code.x).toBeGreaterThan(sheet.widthMm);
    expect(layoutLabels([], sheet).pages).toEqual([[]]);
  });

  test('of every sheet lie on its paper', () => {
    for (const sheet of LABEL_SHEETS) {
      const { pages, widthMm, heightMm } = layoutLabels(
        Array.from({ length: sheet.columns * sheet.rows }, () => ({ link: 'x', title: '', lines: [] })),
        sheet,
      );
      expect(pages).toHaveLength(1);
      const last = pages[0]!.at(-1)!;
      expect(last.words.x + last.words.widthMm).toBeLessThan(widthMm);
      expect(last.words.y + last.words.heightMm).toBeLessThan(heightMm);
    }
  });
});
