import { develop } from './develop.mjs';
import { lampsAt, specimenOf } from './scene.mjs';

const GROUNDS = ['#4a4640', '#6b675e', '#2d3a3c', '#8a7a62', '#b9b4a8'];

/**
 * A photo of one board of its kind, as JPEG: `faults` on it, `camera` over it (see `cameraOver`), `lamps` as `lampsAt` takes them. `random` makes the board its own one
 * and the photo too: focus, grain, what it lies on.
 */
export async function takePhoto(studio, { board, faults, camera, lamps, random }) {
  const specimen = specimenOf(board, faults, random);
  const ground = GROUNDS[Math.floor(random() * GROUNDS.length)];
  const png = await studio.draw({ specimen, camera, light: lampsAt(lamps), ground });
  const isScan = lamps.isScan ?? false;
  const look = {
    blurPx: isScan ? 0.3 + 0.3 * random() : 0.4 + 0.7 * random(),
    grain: isScan ? 0.8 : 1.2 + 1.6 * random(),
    vignette: isScan ? 0 : 0.18,
    quality: 90,
  };
  return develop(png, camera, look, random);
}
