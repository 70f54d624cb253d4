import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import type { DifferenceKind } from '../../src/core/vision/difference/profile.ts';
import type { Pixels } from '../../src/core/vision/image/plane.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { plantDefects, type Box, type PlantedKind } from './vision-defects.ts';
import { photograph, type Scene, type Shot } from './vision-scene.ts';

/** A pair with what truly differs in it, in px of the reference. */
export interface PairCase {
  readonly name: string;
  readonly reference: Pixels;
  readonly other: Pixels;
  readonly truth: readonly { readonly box: Box; readonly kind: DifferenceKind }[];
  /** Where each point of the other picture, as it was before it was photographed anew, really lies. */
  readonly shot?: Shot;
  /** The other picture before it was photographed anew. */
  readonly flat?: Pixels;
}

export const DATA = fileURLToPath(new URL('../../../shared/data/', import.meta.url));
const DEEPPCB = `${DATA}deeppcb/`;
export const hasDeepPcb = (): boolean => existsSync(DEEPPCB);
export const hasBoards = (): boolean => existsSync(`${DATA}boards`);

/** The pairs of DeepPCB that are given, by name: those at even places are for tuning, those at odd places for measuring. */
export const deepPcbNames = (part: 'tuning' | 'measuring'): string[] =>
  readdirSync(DEEPPCB)
    .filter((file) => /^\d+\.txt$/.test(file))
    .map((file) => file.slice(0, -4))
    .sort()
    .filter((_, i) => i % 2 === Number(part === 'measuring'));

/** Their types of defect, 1 to 6, as kinds: opens, bites and pin-holes take copper, shorts, spurs and spurious copper add it. */
const DEEPPCB_KINDS: Readonly<Record<number, DifferenceKind>> = {
  1: 'damaged',
  2: 'added',
  3: 'damaged',
  4: 'added',
  5: 'added',
  6: 'damaged',
};

export async function deepPcbCase(name: string): Promise<PairCase> {
  const [reference, other] = await Promise.all(['temp', 'test'].map((end) => grey(`${DEEPPCB}${name}_${end}.jpg`)));
  const lines = readFileSync(`${DEEPPCB}${name}.txt`, 'utf8').trim().split('\n');
  const truth = lines.map((line) => {
    const [left, top, right, bottom, kind] = line.trim().split(/\s+/).map(Number) as [number, number, number, number, number];
    return { box: [left, top, right, bottom] as Box, kind: DEEPPCB_KINDS[kind]! };
  });
  return { name, reference: reference!, other: other!, truth };
}

/** Turned up to 30°, tilted up to 15°, under sloping light, a little blurred, with noise. */
const TURNED: Scene = { maxTurnDeg: 30, maxTiltDeg: 15, light: 0.4, offset: 20, maxBlurPx: 1, noise: 3, lens: 0, tint: 0, canvas: 1.65 };

/** A DeepPCB pair with the tested board photographed anew. */
export async function turnedCase(name: string): Promise<PairCase> {
  const pair = await deepPcbCase(name);
  const shot = photograph(pair.other, TURNED, randomStream(`turned ${name}`));
  return { ...pair, name: `turned ${name}`, other: shot.pixels, shot, flat: pair.other };
}

async function grey(file: string): Promise<Pixels> {
  const { data, info } = await sharp(file).greyscale().raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, channels: 1, data: new Uint8Array(data) };
}

/** Where the board lies in each photograph; two are for tuning, the third one for measuring. */
export const BOARDS = {
  tuning: [
    { file: 'CLUE/4500.jpg', region: [245, 155, 940, 725] },
    { file: 'FunHouse/4985.jpg', region: [345, 55, 845, 805] },
  ],
  measuring: [{ file: 'Metro-RP2350/6003.jpg', region: [150, 115, 800, 590] }],
} as const;

/** By hand: turned up to 25°, tilted up to 12°, a lens, sloping light and a tint, a little blurred, with noise. */
export const HAND: Scene = {
  maxTurnDeg: 25,
  maxTiltDeg: 12,
  light: 0.4,
  offset: 15,
  maxBlurPx: 1.1,
  noise: 3,
  lens: 0.01,
  tint: 0.1,
  canvas: 1.5,
};
/** By a flatbed: turned a little, no perspective, even light, dust is planted beside. */
const SCAN: Scene = { maxTurnDeg: 4, maxTiltDeg: 0, light: 0.06, offset: 4, maxBlurPx: 0.6, noise: 2, lens: 0, tint: 0.02, canvas: 1.2 };

export const MARGIN_PX = 40;
const KIND_OF: Readonly<Record<PlantedKind, DifferenceKind>> = {
  missing: 'missing',
  added: 'added',
  moved: 'moved',
  stain: 'stain',
  scratch: 'damaged',
};

/** The photograph of a board, cut to it with a margin, and where the board lies in it. */
export async function boardPhoto({ file, region }: { file: string; region: Box }): Promise<{ pixels: Pixels; region: Box }> {
  const [left, top, right, bottom] = region;
  const cut = { left: left - MARGIN_PX, top: top - MARGIN_PX, width: right - left + 2 * MARGIN_PX, height: bottom - top + 2 * MARGIN_PX };
  const { data, info } = await sharp(`${DATA}boards/${file}`).extract(cut).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const pixels: Pixels = { width: info.width, height: info.height, channels: 3, data: new Uint8Array(data) };
  return { pixels, region: [MARGIN_PX, MARGIN_PX, MARGIN_PX + right - left, MARGIN_PX + bottom - top] };
}

/**
 * A pair of one board: the photograph, and the same with `defects` planted by seed (none for a clean pair), photographed anew by hand or by a flatbed, as JPEG.
 * On a scan both pictures are scanned, with dust on each.
 */
export async function boardCase(
  board: { file: string; region: Box },
  how: 'hand' | 'scan',
  defects: number,
  seed: string,
): Promise<PairCase> {
  const { pixels, region } = await boardPhoto(board);
  const random = randomStream(`${how} ${board.file} ${seed}`);
  const { pixels: faulty, planted } = plantDefects(pixels, region, defects, random);
  const truth = planted.map(({ box, kind }) => ({ box, kind: KIND_OF[kind] }));
  const shot = photograph(how === 'scan' ? dusted(faulty, random) : faulty, how === 'scan' ? SCAN : HAND, random);
  const reference = how === 'scan' ? dusted(pixels, random) : pixels;
  return { name: `${how} ${board.file} ${seed}`, reference, other: await throughJpeg(shot.pixels), truth, shot, flat: faulty };
}

/** Specks of dust of one to three px, and a few short fibres. */
function dusted(from: Pixels, random: () => number): Pixels {
  const data = from.data.slice();
  const dot = (x: number, y: number, value: number): void => {
    if (x < 0 || y < 0 || x >= from.width || y >= from.height) return;
    for (let c = 0; c < from.channels; c++) data[(y * from.width + x) * from.channels + c] = value;
  };
  for (let k = 0; k < 25; k++) {
    const [x, y, size] = [Math.floor(random() * from.width), Math.floor(random() * from.height), 1 + Math.floor(random() * 2)];
    for (let v = 0; v < size; v++) for (let u = 0; u < size; u++) dot(x + u, y + v, 150 + 50 * random());
  }
  for (let k = 0; k < 3; k++) {
    let [x, y, turn] = [random() * from.width, random() * from.height, random() * 6];
    for (let s = 0; s < 10; s++) {
      dot(Math.round(x), Math.round(y), 160);
      x += Math.cos(turn);
      y += Math.sin(turn);
      turn += random() - 0.5;
    }
  }
  return { ...from, data };
}

export async function throughJpeg(pixels: Pixels): Promise<Pixels> {
  const { width, height, channels } = pixels;
  const jpeg = await sharp(pixels.data, { raw: { width, height, channels } }).jpeg({ quality: 90 }).toBuffer();
  const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, channels: info.channels as 1 | 3, data: new Uint8Array(data) };
}
