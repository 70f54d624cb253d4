import { describe, expect, it } from 'vitest';
import type { Pixels } from '../image/plane.ts';
import { randomStream } from '../../numeric/index.ts';
import { structuralSimilarity } from './structural-similarity.ts';
import { encodedOf, labOfSrgb } from './srgb.ts';
import { balanceFrom, colourOf, shellColours } from './white-balance.ts';

/** A picture of a grey card (left half) and a shell (right half) under a lamp whose colour multiplies the light. */
function underLamp(shell: readonly [number, number, number], lamp: readonly [number, number, number], card = 0.18): Pixels {
  const data = new Uint8Array(20 * 10 * 3);
  for (let y = 0; y < 10; y++)
    for (let x = 0; x < 20; x++)
      for (let c = 0; c < 3; c++) data[(y * 20 + x) * 3 + c] = Math.round(encodedOf((x < 10 ? card : shell[c]!) * lamp[c]!));
  return { width: 20, height: 10, channels: 3, data };
}
const CARD = { left: 0, top: 0, right: 10, bottom: 10 };
const SHELL = { left: 10, top: 0, right: 20, bottom: 10 };

describe('white balance from a grey card', () => {
  it('gives one shell the same colour under a warm and under a cold lamp', () => {
    const shell = [0.5, 0.45, 0.3] as const;
    const colours = (
      [
        [1.2, 1, 0.7],
        [0.8, 1, 1.1],
      ] as const
    ).map((lamp) => {
      const picture = underLamp(shell, lamp);
      const balance = balanceFrom(picture, CARD);
      if (!balance.ok) throw new Error(balance.code);
      return colourOf(picture, SHELL, balance);
    });
    expect(Math.abs(colours[0]!.b - colours[1]!.b)).toBeLessThan(1);
    expect(Math.abs(colours[0]!.L - colours[1]!.L)).toBeLessThan(1);
  });

  it('refuses a card that is burnt out, and one that is black', () => {
    expect(balanceFrom(underLamp([0.5, 0.5, 0.5], [1, 1, 1], 1), CARD)).toEqual({ ok: false, code: 'overexposed' });
    expect(balanceFrom(underLamp([0.5, 0.5, 0.5], [1, 1, 1], 0), CARD)).toEqual({ ok: false, code: 'underexposed' });
  });

  it('says by how much a region of the shell is yellower than the reference', () => {
    const picture = underLamp([0.5, 0.45, 0.3], [1, 1, 1]);
    const balance = balanceFrom(picture, CARD);
    if (!balance.ok) throw new Error(balance.code);
    const [same, yellow] = shellColours(picture, [SHELL, SHELL], balance, colourOf(picture, SHELL, balance));
    expect(same!.difference).toBe(0);
    const [against] = shellColours(picture, [SHELL], balance, labOfSrgb(190, 190, 190));
    expect(against!.yellower).toBeGreaterThan(10);
    expect(against!.difference).toBeGreaterThan(yellow!.difference);
  });
});

describe('structural similarity', () => {
  it('is one for a picture and itself, and falls as noise grows', () => {
    const random = randomStream('similarity');
    const plane = { width: 40, height: 40, data: Float32Array.from({ length: 1600 }, (_, i) => 100 + 60 * Math.sin(i / 7)) };
    const noisy = (by: number) => ({ ...plane, data: plane.data.map((v) => v + by * (random() - 0.5)) });
    expect(structuralSimilarity(plane, plane)).toBeCloseTo(1, 6);
    const little = structuralSimilarity(plane, noisy(10));
    const much = structuralSimilarity(plane, noisy(80));
    expect(little).toBeLessThan(1);
    expect(much).toBeLessThan(little);
  });
});
