import { expect, test } from 'vitest';
import type { Model, ReferenceReading } from '../models/index.ts';
import { smallModels } from '../testing/small-model.ts';
import { pooledPoints } from './pooled-points.ts';

const lamp = smallModels().get('lamp-1')!;
const read = (board: string, value: number | null, revision = '', point = 'cell-v'): ReferenceReading => ({
  board,
  point,
  mode: point === 'cell-v' ? 'volts' : 'ohms',
  value,
  revision,
});
const bulb = { ...lamp.file.points[0]!, id: 'bulb-r', name: 'Bulb', mode: 'ohms' as const };
const poolOf = (...readings: ReferenceReading[]) => {
  const model: Model = { ...lamp, file: { ...lamp.file, points: [...lamp.file.points, bulb] }, readings };
  return new Map(pooledPoints(model).map((each) => [each.point.id, each]));
};

test('each board counts once, by the middle of its readings, and a wild one moves nothing', () => {
  const pool = poolOf(read('a', 3), read('a', 3.02), read('a', 300), read('b', 3.01), read('c', 3.03), read('d', 0.2)).get('cell-v')!;
  expect(pool.boards).toEqual([
    { board: 'a', revision: '', value: 3.02 },
    { board: 'b', revision: '', value: 3.01 },
    { board: 'c', revision: '', value: 3.03 },
    { board: 'd', revision: '', value: 0.2 },
  ]);
  expect(pool.reference!.mean).toBeCloseTo(3.015, 9);
  expect(pool.reference!.boards).toBe(4);
  expect(pool.reference!.spread).toBeLessThan(0.05);
  expect(pool).toMatchObject({ sameChance: null, differs: false });
});

test('revisions that differ by more than their boards do are told, others are not', () => {
  const board = (revision: string, at: number) => [
    read(`${revision}-1`, at, revision),
    read(`${revision}-2`, at * 1.01, revision),
    read(`${revision}-3`, at * 0.99, revision),
    read(`${revision}-1`, 100, revision, 'bulb-r'),
    read(`${revision}-2`, 101 + (revision === 'A' ? 0 : 1), revision, 'bulb-r'),
    read(`${revision}-3`, 99, revision, 'bulb-r'),
  ];
  const pool = poolOf(...board('A', 3), ...board('B', 3.4));
  expect(pool.get('cell-v')).toMatchObject({
    differs: true,
    revisions: [
      { revision: 'A', middle: 3 },
      { revision: 'B', middle: 3.4 },
    ],
  });
  expect(pool.get('cell-v')!.sameChance).toBeLessThan(0.01);
  expect(pool.get('bulb-r')!.differs).toBe(false);
});

test('open on one revision and closed on the other differs once more than two boards say so', () => {
  const two = [read('a', null, 'A', 'bulb-r'), read('b', 12, 'B', 'bulb-r')];
  expect(poolOf(...two).get('bulb-r')!.differs).toBe(false);
  expect(poolOf(...two, read('c', null, 'A', 'bulb-r')).get('bulb-r')!.differs).toBe(true);
});

test('one board of each revision says little', () => {
  expect(poolOf(read('a', 3, 'A'), read('b', 3.1, 'B')).get('cell-v')!.differs).toBe(false);
});
