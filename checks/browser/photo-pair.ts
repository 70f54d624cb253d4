import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { parse } from 'yaml';
import { boardFrame } from '../../src/bench/eyes/board-frame.ts';
import { mapped, type Pixels } from '../../src/core/vision/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { missing } from '../figures/vision-defects.ts';
import type { ModelFile } from '../../src/bench/models/index.ts';

const MODEL = join(import.meta.dirname, '../../models/tern-tn20');
const REFERENCE = join(MODEL, 'photos/board-front.jpg');

/** A place of the board of a Tern TN-20 from which something was taken away: its middle and its size, mm. */
export interface Gone {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** The reference photo of a Tern TN-20 taken again in other light and turned a little, with bare board where parts are gone. */
export async function photoWithout(gone: readonly Gone[], turnDeg = 2): Promise<Buffer> {
  const { data, info } = await sharp(REFERENCE).raw().toBuffer({ resolveWithObject: true });
  let pixels: Pixels = { width: info.width, height: info.height, channels: 3, data };
  const file = parse(readFileSync(join(MODEL, 'model.yaml'), 'utf8')) as ModelFile;
  const { toPhoto } = boardFrame(file.board!, 'board-front', file.photo_corners![0]!.corners)!;
  const random = randomStream('taken off');
  for (const { x, y, w, h } of gone) {
    const [left, top] = mapped(toPhoto, x - w / 2, y + h / 2);
    const [right, bottom] = mapped(toPhoto, x + w / 2, y - h / 2);
    const at = [left, top, right - left, bottom - top].map((share) => Math.round(share * info.width)) as [number, number, number, number];
    pixels = missing(pixels, ...at, random);
  }
  return sharp(pixels.data, { raw: { width: info.width, height: info.height, channels: 3 } })
    .rotate(turnDeg, { background: { r: 190, g: 188, b: 182 } })
    .linear(0.9, 4)
    .jpeg({ quality: 90 })
    .toBuffer();
}
