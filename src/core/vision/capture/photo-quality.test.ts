import { describe, expect, it } from 'vitest';
import { blurredPixels } from '../testing/blurred-pixels.ts';
import { drawnBoard } from '../testing/drawn-board.ts';
import type { Pixels } from '../image/plane.ts';
import { photoQuality } from './photo-quality.ts';

const { pixels } = drawnBoard('quality', 900, 700);
const lit = (gain: number): Pixels => ({ ...pixels, data: pixels.data.map((value) => Math.min(255, value * gain)) });

describe('the quality of a photo', () => {
  it('is good for a sharp one, whatever its light within reason', () => {
    for (const gain of [0.7, 1, 1.3]) expect(photoQuality(lit(gain)).troubles).toEqual([]);
    expect(photoQuality(lit(0.7)).sharpness).toBeCloseTo(photoQuality(pixels).sharpness, 1);
  });

  it('falls with blur', () => {
    const grades = [0, 1, 2, 4].map((radius) => photoQuality(blurredPixels(pixels, radius)).sharpness);
    expect(grades.toSorted((a, b) => b - a)).toEqual(grades);
    expect(photoQuality(blurredPixels(pixels, 6)).troubles).toContain('blurred');
  });

  it('names too little light, too much, and a highlight', () => {
    expect(photoQuality(lit(0.15)).troubles).toContain('too-dark');
    expect(photoQuality(lit(6)).troubles).toContain('too-bright');
    const shining = { ...pixels, data: pixels.data.map((value, i) => (i % (3 * 900) < 300 && i < 3 * 900 * 300 ? 255 : value)) };
    expect(photoQuality(shining).troubles).toContain('glare');
  });
});
