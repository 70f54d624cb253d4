import { randomStream } from '../../numeric/index.ts';
import { fourPointMap, type Quad } from '../align/four-point-map.ts';
import { mapped } from '../align/homography.ts';
import { encodedOf } from '../colour/srgb.ts';
import type { Shown } from '../display/check-display.ts';
import type { Pixels } from '../image/plane.ts';

export interface DisplayFlaws {
  /** Dots that stay dark, or on black lit: column and row. */
  readonly dots?: readonly (readonly [number, number])[];
  readonly columns?: readonly number[];
  readonly rows?: readonly number[];
  /** Round stains: middle and radius in shares of the width, and how much light they take. */
  readonly stains?: readonly { readonly x: number; readonly y: number; readonly radius: number; readonly takes: number }[];
  /** Light that is missing at the lower edge, as a share, falling off towards the top. */
  readonly fall?: number;
}

export interface DisplayPose {
  readonly seed: string;
  readonly dots?: readonly [number, number];
  readonly width?: number;
  readonly height?: number;
  readonly corners?: Quad;
  /** Spread of the noise of the camera, of 255. */
  readonly noise?: number;
  /** Light of the display at its middle, 0..1. */
  readonly light?: number;
}

export const DOTS = [80, 60] as const;
export const CORNERS: Quad = [
  [40, 34],
  [428, 28],
  [436, 332],
  [36, 340],
];
const BLUR = 2;

/** A photo of a display that shows one colour all over: dots with dark gaps, lens fall-off, noise, perspective, drawn by seed. */
export function photographedDisplay(shows: Shown, flaws: DisplayFlaws, pose: DisplayPose): Pixels {
  const { seed, dots = DOTS, width = 470, height = 370, corners = CORNERS, noise = 1.5, light = 0.5 } = pose;
  const next = randomStream(seed);
  const toDisplay = fourPointMap(corners, [
    [0, 0],
    [dots[0], 0],
    [dots[0], dots[1]],
    [0, dots[1]],
  ])!;
  const data = new Uint8Array(width * height * 3);
  for (let y = 0, p = 0; y < height; y++)
    for (let x = 0; x < width; x++, p += 3) {
      let seen = 0;
      // Several rays a pixel: the lens and the sensor smear single dots.
      for (let k = 0; k < BLUR * BLUR; k++) {
        const [u, v] = mapped(toDisplay, x + ((k % BLUR) - 0.5) * 0.8, y + (Math.floor(k / BLUR) - 0.5) * 0.8);
        seen += lightAt(u, v, dots, flaws, shows === 'black') / BLUR ** 2;
      }
      const vignette = 1 - 0.18 * (((x - width / 2) / width) ** 2 + ((y - height / 2) / height) ** 2) * 2;
      const level = encodedOf(seen * light * vignette) + 2 * noise * (next() + next() + next() - 1.5);
      for (let c = 0; c < 3; c++) {
        const own = shows === 'white' || shows === 'black' || ['red', 'green', 'blue'].indexOf(shows) === c ? level : 0.12 * level;
        data[p + c] = Math.max(0, Math.min(255, Math.round(own)));
      }
    }
  return { width, height, channels: 3, data };
}

/** Light at a place of the display, in dots; a dark frame around it. */
function lightAt(u: number, v: number, [across, down]: readonly [number, number], flaws: DisplayFlaws, black: boolean): number {
  if (u < 0 || v < 0 || u >= across || v >= down) return 0.02;
  const [column, row] = [Math.floor(u), Math.floor(v)];
  const dead = flaws.dots?.some(([x, y]) => x === column && y === row) || flaws.columns?.includes(column) || flaws.rows?.includes(row);
  if (black) return dead ? 0.5 : 0.004;
  const gap = u - column < 0.08 || v - row < 0.08 ? 0.6 : 1;
  const stain = (flaws.stains ?? []).reduce((left, { x, y, radius, takes }) => {
    const far = Math.hypot(u / across - x, (v - y * down) / across) / radius;
    return left * (far < 1 ? 1 - takes * (1 - far * far) : 1);
  }, 1);
  return dead ? 0.03 : gap * stain * (1 - (flaws.fall ?? 0) * (v / down) ** 4);
}
