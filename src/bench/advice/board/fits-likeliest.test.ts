import { expect, it } from 'vitest';
import { did } from '../testing/bench-of.ts';
import { boardReads, DARK, lampFile, read } from '../testing/lamp-board.ts';

const OPEN_FUSE = [
  read('vsys.volts', boardReads('vsys.volts', 'f1:open'), 'volts'),
  read('v33.volts', boardReads('v33.volts', 'f1:open'), 'volts'),
];
const fitsOf = (steps: Parameters<typeof lampFile>[0]) => lampFile(steps).readings.map(({ point, fits }) => [point, fits]);

it('readings of a board with the likeliest fault are what it would show; one that it would not show is told', () => {
  const file = lampFile([...DARK, ...OPEN_FUSE]);
  expect([file.belief.hypotheses[0]!.faults, file.belief.hypotheses[0]!.alike].flat().map(({ id }) => id)).toContain('f1:open');
  expect(file.readings.map(({ fits }) => fits)).toEqual([true, true]);
  expect(fitsOf([...DARK, ...OPEN_FUSE, read('v33.volts', 3.3, 'volts')]).at(-1)).toEqual(['v33.volts', false]);
});

it('of a reading from before the last work nothing is said', () => {
  const replaced = did('u1', 'new-fuse', 'not-tried-yet');
  expect(fitsOf([...DARK, ...OPEN_FUSE, replaced])).toEqual([
    ['vsys.volts', null],
    ['v33.volts', null],
  ]);
});

it('nothing is said without boards', () => {
  expect(
    lampFile([...DARK, read('vsys.volts', 0, 'volts')], { boards: { knowledge: () => null } }).readings.map(({ fits }) => fits),
  ).toEqual([null]);
});
