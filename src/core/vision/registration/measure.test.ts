import { describe, expect, it } from 'vitest';
import { measured } from './measure.ts';
import { register, type MarkPair } from './register.ts';

/** A photo of 20 px to a millimetre from straight above, its upper left corner at (0, 50) mm. */
const mark = (name: string, x: number, y: number, offPx = 0): MarkPair => ({
  name,
  boardMm: [x, y],
  photoPx: [20 * x + offPx, 20 * (50 - y)],
});
const place = (...marks: MarkPair[]) => {
  const found = register(marks, 'front');
  if (!found.ok) throw new Error(found.code);
  return found;
};

describe('measuring on a photo that was laid on its board', () => {
  it('gives the distance of two places, along the axes too, and where they lie', () => {
    const found = measured(place(mark('A', 5, 5), mark('B', 65, 45)), [200, 300], [260, 220]);
    expect(found.from[0]).toBeCloseTo(10, 9);
    expect(found.from[1]).toBeCloseTo(35, 9);
    expect(found.alongX.mm).toBeCloseTo(3, 9);
    expect(found.alongY.mm).toBeCloseTo(4, 9);
    expect(found.apart.mm).toBeCloseTo(5, 9);
  });

  it('is as sure as two taps allow on a short stretch, and less sure over a long one or by marks that disagree', () => {
    const exact = place(mark('A', 5, 5), mark('B', 65, 45));
    const short = measured(exact, [200, 300], [220, 300]);
    expect(short.apart.errorMm).toBeGreaterThan((Math.SQRT2 * 1.5) / 20);
    expect(short.apart.errorMm).toBeLessThan(0.12);
    const long = measured(exact, [0, 0], [1400, 1000]);
    expect(long.apart.errorMm).toBeGreaterThan(short.apart.errorMm);
    const torn = place(mark('A', 5, 5, 6), mark('B', 65, 45, -6), mark('C', 65, 5), mark('D', 5, 45), mark('E', 30, 20, 8));
    expect(measured(torn, [0, 0], [1400, 1000]).apart.errorMm).toBeGreaterThan(long.apart.errorMm);
  });
});
