import { expect, test } from 'vitest';
import type { BoardPoint } from '../boards/board-knowledge.ts';
import { smallModels } from '../testing/small-model.ts';
import { PointView } from '../views/index.ts';
import { pointViews } from './point-views.ts';

const lamp = smallModels().get('lamp-1')!;
const state = { id: 'battery', name: 'On its cell', supplies: {}, set: {} };
const circuit = {
  netlist: 'a.cir',
  placement: 'a.csv',
  rails: {},
  states: [state],
  points: { 'cell-v': { red: 'vbat', state: 'battery' } },
  functions: {},
};
const lit = { ...lamp, file: { ...lamp.file, circuit } };
const at = (id: string, more: Partial<BoardPoint> = {}): BoardPoint => ({
  id,
  name: id,
  mode: 'ohms',
  minutes: 1,
  side: 'both',
  stage: 'board-out',
  power: 'battery',
  red: 'v1',
  black: '0',
  named: false,
  ...more,
});

test('points of a model without a circuit say how it is fed, and no net', () => {
  expect(pointViews(lamp, [])).toMatchObject([
    { id: 'cell-v', name: 'Cell voltage', power: { id: 'off', name: 'power off, battery out' }, red: null, black: null },
  ]);
});

test('points of the circuit come after those of the file, each once, with their nets and power states in words', () => {
  const views = pointViews(lit, [at('cell-v', { named: true }), at('v1.ohms'), at('supply', { mode: 'amps', supply: 'X1' })]);
  expect(views.map((view) => [view.id, view.red, view.black, view.power.name])).toEqual([
    ['cell-v', 'vbat', '0', 'On its cell'],
    ['v1.ohms', 'v1', '0', 'On its cell'],
    ['supply', null, null, 'On its cell'],
  ]);
  expect(views.every((view) => PointView.safeParse(view).success)).toBe(true);
});
