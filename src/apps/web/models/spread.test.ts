import { describe, expect, it } from 'vitest';
import { spreadOf } from './spread.ts';

const boards = (...values: (number | null)[]) =>
  values.map((value, index) => ({ board: `b${index}`, point: 'tp1', mode: 'volts' as const, value }));

describe('mean and spread over good boards', () => {
  it('are the sample mean and standard deviation', () => {
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, squares about it sum to 32, so s = √(32/7)
    const spread = spreadOf(boards(2, 4, 4, 4, 5, 5, 7, 9), 'tp1', 'volts');
    expect(spread).toMatchObject({ mean: 5, boards: 8, openBoards: 0 });
    expect(spread!.spread).toBeCloseTo(Math.sqrt(32 / 7), 12);
  });

  it('count boards that show OL apart', () => {
    expect(spreadOf(boards(1, null, 3), 'tp1', 'volts')).toMatchObject({ mean: 2, boards: 3, openBoards: 1 });
    expect(spreadOf(boards(null), 'tp1', 'volts')).toBeNull();
    expect(spreadOf(boards(1), 'tp1', 'ohms')).toBeNull();
  });
});
