import { planeOf, sameSize, type Plane } from '../image/plane.ts';

/** Constants of the source, for values of 0..255. */
const C1 = (0.01 * 255) ** 2;
const C2 = (0.03 * 255) ** 2;
const RADIUS = 5;
const SIGMA = 1.5;

/**
 * Mean structural similarity of two planes, 1 where they are the same. Gaussian window of 11 × 11 px, σ 1.5; windows that reach over the border are left out.
 * Source: Z. Wang, A. Bovik, H. Sheikh, E. Simoncelli, IEEE Transactions on Image Processing 13 (2004), eq. 13.
 */
export function structuralSimilarity(a: Plane, b: Plane): number {
  sameSize(a, b);
  const [ma, mb] = [windowed(a, (i) => a.data[i]!), windowed(a, (i) => b.data[i]!)];
  const [aa, bb, ab] = [
    windowed(a, (i) => a.data[i]! ** 2),
    windowed(a, (i) => b.data[i]! ** 2),
    windowed(a, (i) => a.data[i]! * b.data[i]!),
  ];
  let sum = 0;
  let count = 0;
  for (let y = RADIUS; y < a.height - RADIUS; y++) {
    for (let x = RADIUS, i = y * a.width + RADIUS; x < a.width - RADIUS; x++, i++) {
      const [p, q] = [ma[i]!, mb[i]!];
      const va = aa[i]! - p * p;
      const vb = bb[i]! - q * q;
      const cov = ab[i]! - p * q;
      sum += ((2 * p * q + C1) * (2 * cov + C2)) / ((p * p + q * q + C1) * (va + vb + C2));
      count++;
    }
  }
  return count ? sum / count : 1;
}

const WEIGHTS = (() => {
  const raw = Array.from({ length: 2 * RADIUS + 1 }, (_, k) => Math.exp(-((k - RADIUS) ** 2) / (2 * SIGMA * SIGMA)));
  const total = raw.reduce((sum, w) => sum + w, 0);
  return raw.map((w) => w / total);
})();

/** Gaussian means of a value over the window; sound only away from the border. Double precision: variances are small differences. */
function windowed({ width, height }: Plane, value: (i: number) => number): Float64Array {
  const half = new Float64Array(width * height);
  const out = new Float64Array(width * height);
  const values = Float64Array.from(planeOf(width, height).data, (_, i) => value(i));
  for (let i = RADIUS; i < values.length - RADIUS; i++)
    for (let k = -RADIUS; k <= RADIUS; k++) half[i]! += WEIGHTS[k + RADIUS]! * values[i + k]!;
  for (let i = RADIUS * width; i < out.length - RADIUS * width; i++)
    for (let k = -RADIUS; k <= RADIUS; k++) out[i]! += WEIGHTS[k + RADIUS]! * half[i + k * width]!;
  return out;
}
