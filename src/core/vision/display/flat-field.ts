import { leastSquares } from '../../numeric/index.ts';
import type { Plane } from '../image/plane.ts';

/** Rounds of leaving out what lies beside the surface, and how far beside it must lie, as a share. */
const ROUNDS = 3;
const BESIDE = 0.06;

/**
 * The slow fall of light over a picture: a surface of second order fitted to it, without what lies plainly beside it. Lens, lamp and
 * the angle of view make such a surface; stains and shadows do not.
 */
export function flatField({ width, height, data }: Plane): Plane {
  const terms = (x: number, y: number): number[] => {
    const [u, v] = [(2 * x) / (width - 1) - 1, (2 * y) / (height - 1) - 1];
    return [1, u, v, u * u, u * v, v * v];
  };
  const step = Math.max(1, Math.floor(Math.max(width, height) / 40));
  const samples: Sample[] = [];
  for (let y = 0; y < height; y += step)
    for (let x = 0; x < width; x += step) samples.push({ row: terms(x, y), value: data[y * width + x]! });
  const surface = withoutStrays(samples);
  const out = new Float32Array(data.length);
  for (let y = 0, i = 0; y < height; y++) for (let x = 0; x < width; x++, i++) out[i] = Math.max(1e-3, dot(terms(x, y), surface));
  return { width, height, data: out };
}

interface Sample {
  readonly row: readonly number[];
  readonly value: number;
}

function withoutStrays(samples: readonly Sample[]): Float64Array {
  let surface = fitted(samples);
  for (let round = 0; round < ROUNDS; round++) {
    const kept = samples.filter(({ row, value }) => Math.abs(value - dot(row, surface)) <= BESIDE * dot(row, surface));
    if (kept.length < samples.length / 3) break;
    surface = fitted(kept);
  }
  return surface;
}

const fitted = (samples: readonly Sample[]): Float64Array =>
  leastSquares(
    samples.map(({ row }) => row),
    samples.map(({ value }) => value),
  )!.coefficients;

const dot = (row: readonly number[], weights: Float64Array): number => row.reduce((sum, value, i) => sum + value * weights[i]!, 0);
