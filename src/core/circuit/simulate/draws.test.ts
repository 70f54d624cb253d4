import { expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import { drawBoards, readNetlist } from '../index.ts';

it('draws a part as widely as its own spread says, and the others by the tolerance of their kind', () => {
  const read = readNetlist('guesses\nR1 a 0 1k spread=0.8\nR2 a 0 1k\nXL a 0 LOAD i=5m spread=0.5\n');
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const draws = drawBoards(read.netlist, 4000, randomStream('spreads'));
  const deviation = (part: number): number => {
    const logs = draws.map(({ scale }) => Math.log(scale[part]!));
    const mean = logs.reduce((sum, each) => sum + each, 0) / logs.length;
    return Math.sqrt(logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (logs.length - 1));
  };
  expect([0, 1, 2].map((part) => Math.round(1000 * deviation(part)) / 1000)).toEqual([
    expect.closeTo(0.8, 1),
    expect.closeTo(0.006, 3),
    expect.closeTo(0.5, 1),
  ]);
});
