import { components } from '../image/components.ts';
import type { Plane } from '../image/plane.ts';

/** A darker patch: its box in shares of the display, and how far below the light around it, %. */
export interface Stain {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly darkerPercent: number;
}

/** How far below the slow fall of light a stain lies, and how much of the display it covers. */
const DARKER = 0.07;
const LEAST_SHARE = 0.0015;
const RIM = 0.03;

/** Patches of a smoothed picture that lie below its flat field. Lines are to be taken out before. */
export function stainsOf(smooth: Plane, field: Plane): Stain[] {
  const { width, height } = smooth;
  const below = Float32Array.from(smooth.data, (value, i) => 1 - value / field.data[i]!);
  const [rx, ry] = [Math.ceil(RIM * width), Math.ceil(RIM * height)];
  const mask = Uint8Array.from(below, (value, i) => {
    const x = i % width;
    const y = (i - x) / width;
    return value > DARKER && x >= rx && y >= ry && x < width - rx && y < height - ry ? 1 : 0;
  });
  return components(mask, width)
    .filter(({ pixels }) => pixels.length >= LEAST_SHARE * mask.length)
    .map(({ left, top, right, bottom, pixels }): Stain => ({
      left: left / width,
      top: top / height,
      right: (right + 1) / width,
      bottom: (bottom + 1) / height,
      darkerPercent: 100 * pixels.reduce((most, i) => Math.max(most, below[i]!), 0),
    }));
}
