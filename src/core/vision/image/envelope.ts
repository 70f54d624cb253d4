import type { Plane } from './plane.ts';

/** The least and the greatest value within `radius` px along both axes (a square window), at each pixel. */
export interface Envelope {
  readonly low: Plane;
  readonly high: Plane;
}

/** The envelopes of a plane for a radius of 1 px, 2 px and so on up to `most`. */
export function envelopesOf(plane: Plane, most: number): Envelope[] {
  const found: Envelope[] = [];
  let last: Envelope = { low: plane, high: plane };
  for (let radius = 1; radius <= most; radius++) {
    last = { low: lowestOnce(last.low), high: highestOnce(last.high) };
    found.push(last);
  }
  return found;
}

function lowestOnce({ width, height, data }: Plane): Plane {
  const half = new Float32Array(data.length);
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    const end = start + width - 1;
    let left = data[start]!;
    let here = left;
    for (let i = start; i <= end; i++) {
      const right = i < end ? data[i + 1]! : here;
      const pair = left < here ? left : here;
      half[i] = pair < right ? pair : right;
      left = here;
      here = right;
    }
  }
  for (let y = 0, i = 0; y < height; y++) {
    const up = y > 0 ? -width : 0;
    const down = y < height - 1 ? width : 0;
    for (const end = i + width; i < end; i++) {
      const a = half[i + up]!;
      const b = half[i]!;
      const c = half[i + down]!;
      const pair = a < b ? a : b;
      out[i] = pair < c ? pair : c;
    }
  }
  return { width, height, data: out };
}

function highestOnce({ width, height, data }: Plane): Plane {
  const half = new Float32Array(data.length);
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    const end = start + width - 1;
    let left = data[start]!;
    let here = left;
    for (let i = start; i <= end; i++) {
      const right = i < end ? data[i + 1]! : here;
      const pair = left > here ? left : here;
      half[i] = pair > right ? pair : right;
      left = here;
      here = right;
    }
  }
  for (let y = 0, i = 0; y < height; y++) {
    const up = y > 0 ? -width : 0;
    const down = y < height - 1 ? width : 0;
    for (const end = i + width; i < end; i++) {
      const a = half[i + up]!;
      const b = half[i]!;
      const c = half[i + down]!;
      const pair = a > b ? a : b;
      out[i] = pair > c ? pair : c;
    }
  }
  return { width, height, data: out };
}
