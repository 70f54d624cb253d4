import { describe, expect, it } from 'vitest';
import type { Alignment } from '../align/align.ts';
import { noDisplacement } from '../align/displacement.ts';
import type { Homography } from '../picture-library.ts';
import type { Pixels } from '../image/plane.ts';
import { withVariations } from './known-variation.ts';

const SIZE = 80;
const grey = (value: number): Pixels => ({ width: SIZE, height: SIZE, channels: 3, data: new Uint8Array(3 * SIZE * SIZE).fill(value) });

/** A picture with a darker square of 10 px. */
function withSquare(light: number, x0: number, y0: number): Pixels {
  const picture = grey(light);
  for (let y = y0; y < y0 + 10; y++)
    for (let x = x0; x < x0 + 10; x++) picture.data.fill(light / 2, 3 * (y * SIZE + x), 3 * (y * SIZE + x) + 3);
  return picture;
}

function shifted(dx: number, dy: number): Alignment {
  const h: Homography = [1, 0, dx, 0, 1, dy, 0, 0, 1];
  const pose = { turnDeg: 0, tiltRightDeg: 0, tiltDownDeg: 0, tiltDeg: 0, scale: 1 };
  return { ok: true, h, displacement: noDisplacement(SIZE, SIZE, 16), agreement: { correlation: 1, fitting: 1, overlap: 1 }, pose };
}

const square = (x: number, y: number): [number, number][] => [
  [x, y],
  [x + 10, y],
  [x + 10, y + 10],
  [x, y + 10],
];
const at = ({ data }: Pixels, x: number, y: number): number => data[3 * (y * SIZE + x)]!;

describe('known variations', () => {
  it('stand in a copy of the reference at their own place and in its light', () => {
    const seen = { pixels: withSquare(100, 45, 30), alignment: shifted(15, 10), outline: square(45, 30) };
    const [copy, ...more] = withVariations(grey(200), [seen], 3);
    expect(more).toEqual([]);
    expect(at(copy!, 35, 25)).toBe(100);
    expect(at(copy!, 60, 60)).toBe(200);
    expect(at(copy!, 30, 28)).toBe(100);
    expect(at(copy!, 20, 25)).toBe(200);
  });

  it('that meet go into different copies, the last first, and no more copies are made than wanted', () => {
    const one = { pixels: withSquare(200, 20, 20), alignment: shifted(0, 0), outline: square(20, 20) };
    const plain = { ...one, pixels: grey(200) };
    const elsewhere = { ...one, pixels: withSquare(200, 60, 60), outline: square(60, 60) };
    const copies = withVariations(grey(200), [one, plain, elsewhere], 3);
    expect(copies.map((copy) => [at(copy, 25, 25), at(copy, 65, 65)])).toEqual([
      [200, 100],
      [100, 200],
    ]);
    expect(withVariations(grey(200), [one, plain, elsewhere], 1)).toHaveLength(1);
  });

  it('outside of the photo are left out', () => {
    const seen = { pixels: grey(200), alignment: shifted(200, 0), outline: square(220, 20) };
    expect(withVariations(grey(200), [seen], 3)).toEqual([]);
  });
});
