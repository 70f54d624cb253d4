import { describe, expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import { CORNERS, DOTS, photographedDisplay, type DisplayFlaws } from '../testing/photographed-display.ts';
import { checkDisplay, type DisplayFound, type DisplayQuestion, type Shown } from './check-display.ts';

const found = (shows: Shown, flaws: DisplayFlaws, seed = 'a display', question: Partial<DisplayQuestion> = {}): DisplayFound => {
  const answer = checkDisplay(photographedDisplay(shows, flaws, { seed }), { shows, dots: DOTS, ...question });
  if (!answer.ok) throw new Error(answer.code);
  return answer;
};

describe('a display on a photo', () => {
  it('is found with its corners, and is sound where it is', () => {
    const answer = found('white', {});
    answer.corners.forEach(([x, y], i) => expect(Math.hypot(x - CORNERS[i]![0], y - CORNERS[i]![1])).toBeLessThan(5));
    expect([answer.dots, answer.lines, answer.stains]).toEqual([[], [], []]);
    expect(answer.darkestPercent).toBeLessThan(20);
  });

  it.each(['white', 'red', 'green', 'blue'] as const)('shows each dead dot on %s where it lies', (shows) => {
    const { dots, lines, stains } = found(shows, {
      dots: [
        [40, 30],
        [41, 30],
        [70, 48],
        [60, 20],
      ],
    });
    expect([lines, stains]).toEqual([[], []]);
    const sorted = dots.toSorted((a, b) => a.x - b.x);
    expect(sorted.map(({ count }) => count)).toEqual([2, 1, 1]);
    const truth = [
      [41, 30.5],
      [60.5, 20.5],
      [70.5, 48.5],
    ] as const;
    sorted.forEach(({ x, y }, i) => expect(Math.hypot(x * DOTS[0] - truth[i]![0], y * DOTS[1] - truth[i]![1])).toBeLessThan(1));
  });

  it('shows dots that stay lit on black, with the corners of another photo', () => {
    expect(found('black', { dots: [[33, 44]] }, 'night', { corners: CORNERS }).dots).toMatchObject([{ count: 1 }]);
    expect(found('black', {}, 'night', { corners: CORNERS }).dots).toEqual([]);
    expect(checkDisplay(photographedDisplay('black', {}, { seed: 'n' }), { shows: 'black' })).toEqual({
      ok: false,
      code: 'screen-not-found',
    });
  });

  it('tells lines from dots, across and down', () => {
    const { dots, lines } = found('white', { columns: [50], rows: [20], dots: [[70, 45]] });
    expect(lines.map(({ across, at }) => [across, Math.floor(at * (across ? DOTS[1] : DOTS[0]))])).toEqual([
      [false, 50],
      [true, 20],
    ]);
    expect(dots).toHaveLength(1);
  });

  it('shows a stain with its place and its depth, and does not take the fall-off of the lens for one', () => {
    const { stains, dots } = found('white', { stains: [{ x: 0.3, y: 0.6, radius: 0.08, takes: 0.25 }] });
    expect(dots).toEqual([]);
    expect(stains).toHaveLength(1);
    const { left, right, top, bottom, darkerPercent } = stains[0]!;
    expect([(left + right) / 2, (top + bottom) / 2].map((at) => Number(at.toFixed(1)))).toEqual([0.3, 0.6]);
    expect(Math.abs(darkerPercent - 25)).toBeLessThan(8);
  });

  it('measures how uneven its light is', () => {
    expect(found('white', { fall: 0.4 }).darkestPercent! - found('white', {}).darkestPercent!).toBeGreaterThan(20);
  });

  it('is refused when it is too small, too dark or burnt out', () => {
    const white = (light: number) => photographedDisplay('white', {}, { seed: 'x', light });
    expect(checkDisplay(white(0.015), { shows: 'white', corners: CORNERS })).toEqual({ ok: false, code: 'too-dark' });
    expect(checkDisplay(white(1.6), { shows: 'white', corners: CORNERS })).toEqual({ ok: false, code: 'too-bright' });
    const small = [
      [10, 10],
      [120, 10],
      [120, 90],
      [10, 90],
    ] as const;
    expect(checkDisplay(white(0.5), { shows: 'white', corners: small })).toEqual({ ok: false, code: 'too-small' });
  });
});

describe('ten displays that the limits were not set on', () => {
  it('have at least nineteen of twenty dead dots found, and no more than one speck that is none', () => {
    let [right, wrong, planted] = [0, 0, 0];
    for (let n = 0; n < 10; n++) {
      const next = randomStream(`measured ${n}`);
      const dots = Array.from({ length: Math.floor(next() * 4) }, (): [number, number] => [
        4 + Math.floor(next() * 72),
        4 + Math.floor(next() * 52),
      ]);
      planted += dots.length;
      const answer = checkDisplay(
        photographedDisplay('white', { dots }, { seed: `pose ${n}`, noise: 1 + 2 * next(), light: 0.25 + 0.4 * next() }),
        { shows: 'white', dots: DOTS },
      );
      if (!answer.ok) throw new Error(answer.code);
      const isPlanted = ({ x, y }: { x: number; y: number }): boolean =>
        dots.some(([c, r]) => Math.hypot(x * DOTS[0] - c - 0.5, y * DOTS[1] - r - 0.5) < 1.5);
      right += dots.filter(([c, r]) =>
        answer.dots.some(({ x, y }) => Math.hypot(x * DOTS[0] - c - 0.5, y * DOTS[1] - r - 0.5) < 1.5),
      ).length;
      wrong += answer.dots.filter((dot) => !isPlanted(dot)).length;
    }
    expect(planted).toBeGreaterThan(8);
    expect(right / planted).toBeGreaterThanOrEqual(0.95);
    expect(wrong).toBeLessThanOrEqual(1);
  });
});
