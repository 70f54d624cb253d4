import { describe, expect, it } from 'vitest';
import { patternFromPhoto } from '../../../core/fit/index.ts';
import { marked, nextPin, NO_MARKS, nudged, scaleError, scaleOf, undone, type Brush, type Marks, type Spot } from './photo-marks.ts';

const brush = (tool: Brush['tool'], more: Partial<Brush> = {}): Brush => ({ tool, kind: 'surface', round: false, count: 4, ...more });
const click = (marks: Marks, b: Brush, ...spots: readonly [number, number][]): Marks =>
  spots.reduce((now, [x, y]) => marked(now, { x, y }, b), marks);
const middles = ({ pads }: Marks) => pads.map(({ name, xPx, yPx }) => [name, xPx, yPx]);

describe('clicks on a photo', () => {
  it('make a pad of two corners, whichever way round', () => {
    const { pads } = click(NO_MARKS, brush('pad'), [30, 10], [10, 20]);
    expect(pads).toEqual([{ name: '1', kind: 'surface', round: false, xPx: 20, yPx: 15, wPx: 20, hPx: 10 }]);
  });

  it('make a row from the last pad on by two clicks, numbered on', () => {
    const one = click(NO_MARKS, brush('pad'), [10, 10], [20, 30]);
    const row = click(one, brush('row'), [14, 22], [75, 20]);
    expect(middles(row)).toEqual([
      ['1', 15, 20],
      ['2', 35, 20],
      ['3', 55, 20],
      ['4', 75, 20],
    ]);
    const second = click(row, brush('row', { count: 2 }), [75, 90], [15, 90]);
    expect(middles(second).slice(4)).toEqual([
      ['5', 75, 90],
      ['6', 15, 90],
    ]);
    expect(second.pads.every(({ wPx, hPx }) => wPx === 10 && hPx === 20)).toBe(true);
  });

  it('make no row before there is a pad', () => {
    expect(click(NO_MARKS, brush('row'), [0, 0], [9, 9])).toEqual(NO_MARKS);
  });

  it('leave pegs without a number', () => {
    const pegs = click(NO_MARKS, brush('pad', { kind: 'peg', round: true }), [0, 0], [10, 10]);
    expect(middles(click(pegs, brush('row', { count: 2 }), [5, 5], [45, 5]))).toEqual([
      ['', 5, 5],
      ['', 45, 5],
    ]);
    expect(nextPin(pegs.pads)).toBe('1');
  });

  it('set the scale, and a third one sets it anew', () => {
    const two = click(NO_MARKS, brush('scale'), [0, 0], [30, 40]);
    expect(scaleOf(two, 10)).toEqual({ fromPx: [0, 0], toPx: [30, 40], apartMm: 10 });
    expect(scaleError(scaleOf(two, 10)!)).toBeCloseTo(Math.SQRT2 / 50, 9);
    expect(scaleOf(click(two, brush('scale'), [7, 7]), 10)).toBeNull();
    expect(scaleOf(two, 0)).toBeNull();
    expect(scaleOf(click(NO_MARKS, brush('scale'), [5, 5], [5, 5]), 10)).toBeNull();
  });

  it('can be moved a little and taken back', () => {
    const by: Spot = { x: 1, y: -2 };
    const half = click(NO_MARKS, brush('pad'), [10, 10]);
    expect(nudged(half, by, 'pad').pending).toEqual([{ x: 11, y: 8 }]);
    expect(undone(half, 'pad')).toEqual(NO_MARKS);
    const pad = click(half, brush('pad'), [20, 20]);
    expect(middles(nudged(pad, by, 'pad'))).toEqual([['1', 16, 13]]);
    expect(undone(pad, 'row')).toEqual(NO_MARKS);
    const scale = click(NO_MARKS, brush('scale'), [1, 1], [2, 2]);
    expect(nudged(scale, by, 'scale').scale).toEqual([
      { x: 1, y: 1 },
      { x: 3, y: 0 },
    ]);
    expect(undone(scale, 'scale').scale).toHaveLength(1);
  });

  it('come to a pattern in mm', () => {
    const marks = click(
      click(click(NO_MARKS, brush('scale'), [0, 0], [100, 0]), brush('pad'), [0, 0], [10, 24]),
      brush('row', { count: 3 }),
      [5, 12],
      [37, 12],
    );
    const { pads } = patternFromPhoto('a place', 'connector', marks.pads, scaleOf(marks, 5)!);
    expect(pads.map(({ name, xMm, wMm, hMm }) => [name, ...[xMm, wMm, hMm].map((mm) => Number(mm.toFixed(6)))])).toEqual([
      ['1', -0.8, 0.5, 1.2],
      ['2', 0, 0.5, 1.2],
      ['3', 0.8, 0.5, 1.2],
    ]);
  });
});
