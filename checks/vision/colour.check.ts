import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/core/vision/colour/ciede2000.ts';
import { labOfSrgb, srgbOf, xyzOf } from '../../src/core/vision/colour/srgb.ts';
import { structuralSimilarity } from '../../src/core/vision/colour/structural-similarity.ts';
import { planeOf } from '../../src/core/vision/image/plane.ts';
import { COLOUR_PAIRS } from './colour-pairs.ts';

describe('colour against published values', () => {
  it('gives the difference of all 34 published pairs of CIEDE2000 to 1e-4, whichever colour comes first', () => {
    expect(COLOUR_PAIRS).toHaveLength(34);
    for (const [L1, a1, b1, L2, a2, b2, expected] of COLOUR_PAIRS) {
      const one = { L: L1, a: a1, b: b1 };
      const two = { L: L2, a: a2, b: b2 };
      expect(Math.abs(ciede2000(one, two) - expected)).toBeLessThan(1e-4);
      expect(Math.abs(ciede2000(two, one) - expected)).toBeLessThan(1e-4);
    }
  });

  it.each([
    ['white', [255, 255, 255], [100, 0, 0]],
    ['red', [255, 0, 0], [53.24, 80.09, 67.2]],
    ['green', [0, 255, 0], [87.73, -86.18, 83.18]],
    ['blue', [0, 0, 255], [32.3, 79.19, -107.86]],
    ['mid grey', [128, 128, 128], [53.585, 0, 0]],
  ] as const)('gives the published L*a*b* of %s', (_, [r, g, b], [L, a, bb]) => {
    const lab = labOfSrgb(r, g, b);
    expect(lab.L).toBeCloseTo(L, 2);
    expect(lab.a).toBeCloseTo(a, 2);
    expect(lab.b).toBeCloseTo(bb, 2);
  });

  it('brings every corner of the sRGB cube through XYZ and back to within a thousandth of a step', () => {
    for (const r of [0, 10, 128, 255])
      for (const g of [0, 10, 128, 255])
        for (const b of [0, 10, 128, 255]) {
          const back = srgbOf(...xyzOf(r, g, b));
          [r, g, b].forEach((value, c) => expect(Math.abs(back[c]! - value)).toBeLessThan(0.01));
        }
  });

  it('gives the worked difference of a yellowed shell', () => {
    expect(ciede2000(labOfSrgb(200, 200, 200), labOfSrgb(210, 200, 160))).toBeCloseTo(14.59, 2);
  });

  it('gives the worked structural similarity of flat 100 against flat 120', () => {
    expect(structuralSimilarity(planeOf(24, 24, 100), planeOf(24, 24, 120))).toBeCloseTo(0.983611, 6);
  });
});
