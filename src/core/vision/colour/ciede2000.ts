import { deltaE00, type DeltaE00, type Lab } from './srgb.ts';

const DEGREE = Math.PI / 180;
const POW25_7 = 25 ** 7;

/**
 * The CIEDE2000 difference of two colours, with all weights 1. Source: G. Sharma, W. Wu, E. Dalal, Color Research and Application 30 (2005), eq. 2 to 22; their
 * numbering at the lines.
 */
export function ciede2000(one: Lab, two: Lab): DeltaE00 {
  const meanC = (Math.hypot(one.a, one.b) + Math.hypot(two.a, two.b)) / 2;
  const g = 0.5 * (1 - Math.sqrt(meanC ** 7 / (meanC ** 7 + POW25_7))); // (4)
  const p = polar(one, g);
  const q = polar(two, g);
  const dL = two.L - one.L; // (8)
  const dC = q.c - p.c; // (9)
  const grey = p.c * q.c === 0;
  const dh = grey ? 0 : turnBetween(p.h, q.h); // (10)
  const dH = 2 * Math.sqrt(p.c * q.c) * Math.sin((dh / 2) * DEGREE); // (11)
  const L = (one.L + two.L) / 2; // (12)
  const c = (p.c + q.c) / 2; // (13)
  const h = grey ? p.h + q.h : meanTurn(p.h, q.h); // (14)
  const t =
    1 -
    0.17 * Math.cos((h - 30) * DEGREE) +
    0.24 * Math.cos(2 * h * DEGREE) +
    0.32 * Math.cos((3 * h + 6) * DEGREE) -
    0.2 * Math.cos((4 * h - 63) * DEGREE); // (15)
  const turning = 30 * Math.exp(-(((h - 275) / 25) ** 2)); // (16)
  const rc = 2 * Math.sqrt(c ** 7 / (c ** 7 + POW25_7)); // (17)
  const sl = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2); // (18)
  const sc = 1 + 0.045 * c; // (19)
  const sh = 1 + 0.015 * c * t; // (20)
  const rt = -Math.sin(2 * turning * DEGREE) * rc; // (21)
  return deltaE00(Math.sqrt((dL / sl) ** 2 + (dC / sc) ** 2 + (dH / sh) ** 2 + rt * (dC / sc) * (dH / sh))); // (22)
}

/** Chroma and hue (degrees, 0..360) after the stretch of a* by 1 + g. */
function polar({ a, b }: Lab, g: number): { c: number; h: number } {
  const stretched = (1 + g) * a; // (5)
  const c = Math.hypot(stretched, b); // (6)
  const h = stretched === 0 && b === 0 ? 0 : (Math.atan2(b, stretched) / DEGREE + 360) % 360; // (7)
  return { c, h };
}

function turnBetween(from: number, to: number): number {
  const d = to - from;
  if (d > 180) return d - 360;
  return d < -180 ? d + 360 : d;
}

function meanTurn(h1: number, h2: number): number {
  if (Math.abs(h1 - h2) <= 180) return (h1 + h2) / 2;
  return h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
}
