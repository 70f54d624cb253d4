import { gaussianBlur } from '../image/blur.ts';
import type { Plane } from '../image/plane.ts';

/** How well two pictures that lie on one another agree. */
export interface Agreement {
  /** Mean correlation of squares that hold structure, each after a small shift of its own; −1..1. */
  readonly correlation: number;
  /** Share of the squares with structure whose correlation is above `FITTING`. */
  readonly fitting: number;
  /** Share of the reference that is seen in the other picture. */
  readonly overlap: number;
}

const SQUARE_PX = 20;
const FITTING = 0.6;
/** Squares of the reference with less contrast (standard deviation, grey) say nothing. */
const LEAST_CONTRAST = 10;

/**
 * How well `laid` agrees with `reference`, both small (some 500 px), `valid` where both are seen. Each square of 20 px may move by `searchPx`. Correlation is blind to
 * gain and offset of the light.
 */
export function agreementOf(reference: Plane, laid: Plane, valid: Uint8Array, searchPx: number): Agreement {
  const a = gaussianBlur(reference, 1.6);
  const b = gaussianBlur(laid, 1.6);
  let sum = 0;
  let fitting = 0;
  let count = 0;
  for (const y of starts(a.height, searchPx)) {
    for (const x of starts(a.width, searchPx)) {
      if (!valid[(y + SQUARE_PX / 2) * a.width + x + SQUARE_PX / 2]) continue;
      const best = bestCorrelation(a, b, x, y, searchPx);
      if (best === undefined) continue;
      count++;
      sum += best;
      if (best > FITTING) fitting++;
    }
  }
  const overlap = valid.reduce((total, v) => total + v, 0) / valid.length;
  return { correlation: count ? sum / count : 0, fitting: count ? fitting / count : 0, overlap };
}

/** Starts of squares that cover a length from end to end, the search left free. */
function starts(length: number, searchPx: number): number[] {
  const room = length - SQUARE_PX - 2 * searchPx;
  const count = Math.max(1, Math.ceil(room / SQUARE_PX));
  return Array.from({ length: room < 0 ? 0 : count + 1 }, (_, k) => searchPx + Math.round((k * room) / count));
}

function bestCorrelation(a: Plane, b: Plane, x0: number, y0: number, searchPx: number): number | undefined {
  let best = -1;
  for (let dy = -searchPx; dy <= searchPx; dy += 1 + Number(searchPx > 1)) {
    for (let dx = -searchPx; dx <= searchPx; dx += 1 + Number(searchPx > 1)) {
      const value = correlation(a, b, x0, y0, dx, dy);
      if (value === undefined) return undefined;
      if (value > best) best = value;
    }
  }
  return best;
}

function correlation(a: Plane, b: Plane, x0: number, y0: number, dx: number, dy: number): number | undefined {
  let [n, sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0, 0];
  for (let y = y0; y < y0 + SQUARE_PX; y += 2) {
    for (let x = x0; x < x0 + SQUARE_PX; x += 2) {
      const p = a.data[y * a.width + x]!;
      const q = b.data[(y + dy) * b.width + x + dx]!;
      n++;
      sa += p;
      sb += q;
      saa += p * p;
      sbb += q * q;
      sab += p * q;
    }
  }
  const va = saa - (sa * sa) / n;
  const vb = sbb - (sb * sb) / n;
  if (va < n * LEAST_CONTRAST ** 2) return undefined;
  return (sab - (sa * sb) / n) / Math.sqrt((va + n) * (vb + n));
}
