import { expect, test } from 'vitest';
import { smallModels } from '../testing/small-model.ts';
import { withDerivedShifts } from './derived-shifts.ts';

const { file } = smallModels().get('lamp-1')!;
const point = (block: string, more: object = {}) => ({
  ...file.points[0]!,
  id: 'new',
  name: 'New',
  block,
  mode: 'volts' as const,
  power: 'battery' as const,
  ...more,
});
const shiftsAt = (added: ReturnType<typeof point>) =>
  Object.fromEntries(
    withDerivedShifts({ ...file, points: [...file.points, added] }).faults.flatMap(({ id, shifts }) =>
      shifts['new'] ? [[id, shifts['new']]] : [],
    ),
  );

test('faults of the block of a new point move it, and under power those of what feeds it', () => {
  expect(shiftsAt(point('driver'))).toEqual({ 'driver-dead': 'any', 'switch-dirty': 'low', 'cell-flat': 'low' });
  expect(shiftsAt(point('bulb'))).toEqual({ 'bulb-open': 'any', 'driver-dead': 'low', 'switch-dirty': 'low', 'cell-flat': 'low' });
  expect(shiftsAt(point('cell'))).toEqual({ 'cell-flat': 'any' });
});

test('without power only the block itself counts', () => {
  expect(shiftsAt(point('driver', { power: 'off', mode: 'ohms' }))).toEqual({ 'driver-dead': 'any' });
});

test('a point that a fault names is left alone, and so is a file without silent points', () => {
  expect(withDerivedShifts(file)).toBe(file);
});
