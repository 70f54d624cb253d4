import { gaussianBlur } from '../image/blur.ts';
import { eachPlane, type Picture } from '../image/picture.ts';
import type { Plane } from '../image/plane.ts';

const SIGMAS = [0, 0.75, 1, 1.25, 1.6, 2, 2.5];

/** Both pictures as sharp as the less sharp of them: the sharper one is blurred until its edges hold about as much as the other's. */
export function equallySharp(reference: Picture, other: Picture): { reference: Picture; other: Picture } {
  const a = edgeEnergy(reference.grey);
  const b = edgeEnergy(other.grey);
  const sigma = blurTo(a > b ? reference.grey : other.grey, Math.min(a, b));
  if (sigma === 0) return { reference, other };
  const soften = (picture: Picture): Picture => eachPlane(picture, (plane) => gaussianBlur(plane, sigma));
  return a > b ? { reference: soften(reference), other } : { reference, other: soften(other) };
}

/** The blur, of those that are tried, after which a plane's edges hold least away from `energy`. */
function blurTo(plane: Plane, energy: number): number {
  let best = 0;
  let least = Infinity;
  for (const sigma of SIGMAS) {
    const off = Math.abs(Math.log(edgeEnergy(gaussianBlur(plane, sigma)) / energy));
    if (off >= least) break;
    least = off;
    best = sigma;
  }
  return best;
}

/** Mean squared difference of neighbours, capped so that a single glint does not decide. */
function edgeEnergy({ width, height, data }: Plane): number {
  let sum = 1;
  for (let y = 0; y < height - 1; y += 2) {
    for (let x = 0, i = y * width; x < width - 1; x++, i++) {
      sum += Math.min(3600, (data[i + 1]! - data[i]!) ** 2) + Math.min(3600, (data[i + width]! - data[i]!) ** 2);
    }
  }
  return sum / (width * height);
}
