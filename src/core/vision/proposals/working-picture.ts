import { eachPlane, pictureOf, type Picture } from '../image/picture.ts';
import type { Pixels } from '../image/plane.ts';
import { resized } from '../image/resample.ts';

/** Pixels of the working picture to a millimetre: the smallest chips are then some ten pixels long. */
export const WORKING_PER_MM = 10;

/** A photo brought to the working scale. */
export interface WorkingPicture {
  readonly picture: Picture;
  /** What a place of the working picture is multiplied by to become one of the photo (borders of pixels at whole numbers). */
  readonly toPhoto: number;
}

export function workingPicture(pixels: Pixels, pxPerMm: number): WorkingPicture {
  const factor = WORKING_PER_MM / pxPerMm;
  const width = Math.max(1, Math.round(pixels.width * factor));
  const height = Math.max(1, Math.round(pixels.height * factor));
  return { picture: eachPlane(pictureOf(pixels), (plane) => resized(plane, width, height)), toPhoto: pixels.width / width };
}
