import { greyOf, type Pixels, type Plane } from '../image/plane.ts';
import { resized } from '../image/resample.ts';

/** What one photo says of itself, before it is laid on anything. */
export interface PhotoQuality {
  /** How steep edges are, 0..1; below `QUALITY_LIMITS.sharpness` the photo is blurred. */
  readonly sharpness: number;
  /** Middle of the brightness, 0..255. */
  readonly brightness: number;
  /** Share of pixels that hold nothing: blinded, or black. */
  readonly blinded: number;
  readonly black: number;
  readonly troubles: readonly PhotoTrouble[];
}

export type PhotoTrouble = 'blurred' | 'too-dark' | 'too-bright' | 'glare';

/** Longer side at which a photo is judged, px: blur that is not seen at this size does not hurt a comparison. */
const JUDGED_PX = 1200;
const BLINDED_GREY = 250;
const BLACK_GREY = 6;

/** Limits of what is a good photo of a board, set on the demo's photos and their blurred, darkened and brightened copies (own measurement). */
export const QUALITY_LIMITS = { sharpness: 0.33, dark: 35, bright: 205, blinded: 0.02, black: 0.35 } as const;

/**
 * Sharpness, exposure and glare of a photo, and what of it is too bad to compare. Sharpness is a ratio of contrasts within the photo, so neither light nor paint of the
 * board moves it: the steepest step from pixel to pixel over the greatest one over six pixels, in the tenth of the places with most contrast (own measure).
 */
export function photoQuality(pixels: Pixels): PhotoQuality {
  const factor = Math.min(1, JUDGED_PX / Math.max(pixels.width, pixels.height));
  const whole = greyOf(pixels);
  const grey = factor < 1 ? resized(whole, Math.round(whole.width * factor), Math.round(whole.height * factor)) : whole;
  const sharpness = sharpnessOf(grey);
  const { brightness, blinded, black } = exposureOf(grey);
  const limits = QUALITY_LIMITS;
  const troubles: PhotoTrouble[] = [];
  if (sharpness < limits.sharpness) troubles.push('blurred');
  if (brightness < limits.dark || black > limits.black) troubles.push('too-dark');
  if (brightness > limits.bright) troubles.push('too-bright');
  else if (blinded > limits.blinded) troubles.push('glare');
  return { sharpness, brightness, blinded, black, troubles };
}

const APART_PX = 6;
const SQUARE_PX = 24;

function sharpnessOf(grey: Plane): number {
  const squares: { near: number; far: number }[] = [];
  for (let top = 0; top + SQUARE_PX + APART_PX < grey.height; top += SQUARE_PX)
    for (let left = 0; left + SQUARE_PX + APART_PX < grey.width; left += SQUARE_PX) squares.push(steepestOf(grey, left, top));
  const busiest = squares.toSorted((a, b) => b.far - a.far).slice(0, Math.max(1, Math.round(squares.length / 10)));
  const far = busiest.reduce((sum, square) => sum + square.far, 0);
  return far > 0 ? busiest.reduce((sum, square) => sum + square.near, 0) / far : 0;
}

/** The greatest difference of neighbours, and of pixels six apart, in one square. */
function steepestOf({ width, data }: Plane, left: number, top: number): { near: number; far: number } {
  let [near, far] = [0, 0];
  for (let y = top; y < top + SQUARE_PX; y++)
    for (let i = y * width + left; i < y * width + left + SQUARE_PX; i++) {
      near = Math.max(near, Math.abs(data[i + 1]! - data[i]!), Math.abs(data[i + width]! - data[i]!));
      far = Math.max(far, Math.abs(data[i + APART_PX]! - data[i]!), Math.abs(data[i + APART_PX * width]! - data[i]!));
    }
  return { near, far };
}

function exposureOf({ data }: Plane): Pick<PhotoQuality, 'brightness' | 'blinded' | 'black'> {
  const counts = new Uint32Array(256);
  for (const value of data) counts[Math.max(0, Math.min(255, Math.round(value)))]!++;
  const share = (from: number, to: number): number => counts.slice(from, to).reduce((sum, n) => sum + n, 0) / data.length;
  let [seen, brightness] = [0, 0];
  while (seen + counts[brightness]! < data.length / 2) seen += counts[brightness++]!;
  return { brightness, blinded: share(BLINDED_GREY, 256), black: share(0, BLACK_GREY + 1) };
}
