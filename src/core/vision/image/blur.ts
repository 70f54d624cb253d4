import type { Plane } from './plane.ts';

/** Means over squares of side `2·radius + 1`; near the border over what lies inside. Running sums: the time does not depend on the radius. */
export function boxBlur(plane: Plane, radius: number): Plane {
  if (radius < 1) return plane;
  return columns(rows(plane, radius), radius);
}

/**
 * A Gaussian blur of standard deviation `sigma` px, approximated by three box blurs whose radii sum to its variance
 * (P. Kovesi, "Fast almost-Gaussian filtering", 2010). Below 0.5 px the plane itself comes back.
 */
export function gaussianBlur(plane: Plane, sigma: number): Plane {
  if (sigma < 0.5) return plane;
  if (sigma < 1.2) return binomialBlur(plane, Math.max(1, Math.round(sigma * sigma * 2)));
  const ideal = Math.sqrt((12 * sigma * sigma) / 3 + 1);
  let lower = Math.floor(ideal);
  if (lower % 2 === 0) lower--;
  const few = Math.round((12 * sigma * sigma - 3 * lower * lower - 12 * lower - 9) / (-4 * lower - 4));
  let out = plane;
  for (let i = 0; i < 3; i++) out = boxBlur(out, ((i < few ? lower : lower + 2) - 1) / 2);
  return out;
}

/** `times` passes of (1 2 1)/4 along both axes: a variance of half a square pixel each. */
function binomialBlur(plane: Plane, times: number): Plane {
  let out = plane;
  for (let i = 0; i < times; i++) out = binomialOnce(out);
  return out;
}

function binomialOnce({ width, height, data }: Plane): Plane {
  const half = new Float32Array(data.length);
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    const end = start + width - 1;
    let left = data[start]!;
    let here = left;
    for (let i = start; i <= end; i++) {
      const right = i < end ? data[i + 1]! : here;
      half[i] = 0.25 * (left + right) + 0.5 * here;
      left = here;
      here = right;
    }
  }
  for (let y = 0, i = 0; y < height; y++) {
    const up = y > 0 ? -width : 0;
    const down = y < height - 1 ? width : 0;
    for (const end = i + width; i < end; i++) out[i] = 0.25 * (half[i + up]! + half[i + down]!) + 0.5 * half[i]!;
  }
  return { width, height, data: out };
}

function rows({ width, height, data }: Plane, radius: number): Plane {
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    let sum = 0;
    for (let x = 0; x < Math.min(radius, width); x++) sum += data[start + x]!;
    for (let x = 0; x < width; x++) {
      if (x + radius < width) sum += data[start + x + radius]!;
      if (x - radius - 1 >= 0) sum -= data[start + x - radius - 1]!;
      out[start + x] = sum / (Math.min(width - 1, x + radius) - Math.max(0, x - radius) + 1);
    }
  }
  return { width, height, data: out };
}

function columns({ width, height, data }: Plane, radius: number): Plane {
  const out = new Float32Array(data.length);
  const sums = new Float64Array(width);
  for (let y = 0; y < Math.min(radius, height); y++) for (let x = 0; x < width; x++) sums[x]! += data[y * width + x]!;
  for (let y = 0; y < height; y++) {
    const into = y + radius < height ? (y + radius) * width : -1;
    const from = y - radius - 1 >= 0 ? (y - radius - 1) * width : -1;
    const count = Math.min(height - 1, y + radius) - Math.max(0, y - radius) + 1;
    for (let x = 0; x < width; x++) {
      if (into >= 0) sums[x]! += data[into + x]!;
      if (from >= 0) sums[x]! -= data[from + x]!;
      out[y * width + x] = sums[x]! / count;
    }
  }
  return { width, height, data: out };
}
