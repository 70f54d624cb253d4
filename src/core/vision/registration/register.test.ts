import { describe, expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import { mapped } from '../align/homography.ts';
import type { Homography } from '../picture-library.ts';
import { VisionError } from '../vision-error.ts';
import { assertRegistration } from './assert-registration.ts';
import { register, type MarkPair } from './register.ts';

/** A photo that leans a little: mm with y down to px. */
const LEANING: Homography = [11.5, 1.9, 120, -2.1, 12.2, 90, 2e-3, -1e-3, 1];
const STRAIGHT: Homography = [12, -3, 140, 3, 12, 60, 0, 0, 1];
const HOLES: readonly [string, number, number][] = [
  ['H1', 3, 4],
  ['H2', 66, 5],
  ['H3', 64, 50],
  ['H4', 4, 48],
  ['U1', 30, 22],
  ['U2', 44, 33],
];
const marksOn = (map: Homography, count: number, side: 'front' | 'back' = 'front', noisePx = 0): MarkPair[] => {
  const random = randomStream(`marks ${count}`);
  return HOLES.slice(0, count).map(([name, x, y]) => {
    const [u, v] = mapped(map, side === 'front' ? x : 70 - x, 55 - y);
    return { name, boardMm: [x, y], photoPx: [u + noisePx * (random() - 0.5), v + noisePx * (random() - 0.5)] };
  });
};

describe('laying a photo on a board by marks', () => {
  it('gives turn, size and place from two marks, and says that nothing checks them', () => {
    const place = register(marksOn(STRAIGHT, 2), 'front');
    expect(place).toMatchObject({ ok: true, kind: 'similarity', spreadMm: null });
    assertRegistration(place, marksOn(STRAIGHT, 6));
    if (place.ok) expect(place.pxPerMm).toBeCloseTo(Math.hypot(12, 3), 6);
  });

  it('gives the perspective as well from four marks, exactly, on the front and on the back', () => {
    for (const side of ['front', 'back'] as const) {
      const place = register(marksOn(LEANING, 4, side), side);
      expect(place).toMatchObject({ ok: true, kind: 'homography', spreadMm: null });
      assertRegistration(place, marksOn(LEANING, 6, side));
    }
  });

  it('says how far marks disagree where there are more than needed', () => {
    const place = register(marksOn(LEANING, 6, 'front', 4), 'front');
    if (!place.ok || place.spreadMm === null) throw new Error('no spread');
    expect(place.spreadMm).toBeGreaterThan(0.02);
    expect(place.spreadMm).toBeLessThan(0.4);
    expect(place.residuals.map(({ name }) => name)).toEqual(HOLES.map(([name]) => name));
  });

  it('names the mark that was taken for another one', () => {
    const marks = marksOn(LEANING, 6).map((mark) =>
      mark.name === 'U1' ? { ...mark, photoPx: [mark.photoPx[0] + 60, mark.photoPx[1]] as const } : mark,
    );
    expect(register(marks, 'front')).toMatchObject({ ok: false, code: 'mark-does-not-fit', name: 'U1' });
  });

  it('refuses one mark, marks that are one, marks in a line, and the other side, each by its code', () => {
    const [a, b, c, d] = marksOn(STRAIGHT, 4) as [MarkPair, MarkPair, MarkPair, MarkPair];
    expect(register([a], 'front')).toEqual({ ok: false, code: 'too-few-marks', given: 1 });
    expect(register([a, b, { ...a, name: 'again' }], 'front')).toEqual({ ok: false, code: 'marks-together', names: ['H1', 'again'] });
    const line = [0, 1, 2, 3].map((k): MarkPair => ({ name: `L${k}`, boardMm: [10 * k, 5 * k], photoPx: [100 * k, -50 * k + 400] }));
    expect(register(line, 'front')).toEqual({ ok: false, code: 'marks-in-line' });
    expect(register([a, b, c, d], 'back')).toEqual({ ok: false, code: 'other-side' });
    expect(register([a, { ...b, photoPx: c.photoPx }, { ...c, photoPx: b.photoPx }, d], 'front').ok).toBe(false);
  });

  it('throws for a coordinate that is no number', () => {
    const [a, b] = marksOn(STRAIGHT, 2) as [MarkPair, MarkPair];
    expect(() => register([a, { ...b, photoPx: [Number.NaN, 0] }], 'front')).toThrow(VisionError);
  });
});
