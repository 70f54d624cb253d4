import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { mapped, register, type BoardSide, type MarkPair, type Patch, type Pixels } from '../../src/core/vision/index.ts';
import { boardElements, placedBox, type BoardElement } from './board-file.ts';
import { DATA } from './vision-cases.ts';
import type { Box } from './vision-defects.ts';
import { overUnion } from './vision-score.ts';

/** A photo of a board whose things are known, in px of the photo. */
export interface OutlineCase {
  readonly name: string;
  readonly pixels: Pixels;
  readonly pxPerMm: number;
  readonly board: Box;
  readonly truth: readonly OutlineTruth[];
}

/** A thing on a board: the boxes of its copper and of its drawn body; either is its outline. */
export interface OutlineTruth {
  readonly name: string;
  readonly boxes: readonly Box[];
}

interface BoardPhoto {
  readonly name: string;
  readonly photo: string;
  readonly side: BoardSide;
  /** Where the board lies in the photo, px. */
  readonly board: Box;
  /** Marks: place from the board file, mm; middle in the photo, px, read off it by eye to about 1 px. */
  readonly marks: readonly MarkPair[];
}

/** Seen in tuning: the side with the screen. */
export const TUNED: BoardPhoto = {
  name: 'CLUE',
  photo: 'CLUE/4500.jpg',
  side: 'back',
  board: [250, 160, 938, 724],
  marks: [
    { name: 'FID3', boardMm: [49.3395, 40.767], photoPx: [283.2, 180.4] },
    { name: 'MB1 P0', boardMm: [47.5, 7], photoPx: [308.5, 624.4] },
    { name: 'MB1 GND', boardMm: [4.2, 7], photoPx: [879.2, 629.7] },
  ],
};

/** Never seen in tuning. */
export const MEASURED: BoardPhoto = {
  name: 'Metro',
  photo: 'Metro-RP2350/6003.jpg',
  side: 'front',
  board: [145, 115, 800, 592],
  marks: [
    { name: 'upper right hole', boardMm: [66.04, 35.56], photoPx: [770.4, 277.4] },
    { name: 'lower right hole', boardMm: [66.04, 7.62], photoPx: [769.5, 524.1] },
    { name: 'lower left hole', boardMm: [13.97, 2.54], photoPx: [309.9, 566.7] },
    { name: 'upper left hole', boardMm: [15.24, 50.8], photoPx: [323.1, 141.7] },
  ],
};

export const hasOutlineBoards = (): boolean =>
  [TUNED, MEASURED].every(({ photo }) => existsSync(`${DATA}boards/${photo}`) && boardFileOf(photo) !== undefined);

/** The board file that lies beside a photo of the data set. */
export function boardFileOf(photo: string): string | undefined {
  const folder = dirname(`${DATA}boards/${photo}`);
  const name = readdirSync(folder).find((each) => each.endsWith('.brd'));
  return name && join(folder, name);
}

/** The photo of a board with every element of its file that has copper on the photographed side, and every hole of 2 mm and more. */
export async function outlineCase({ name, photo, side, board, marks }: BoardPhoto): Promise<OutlineCase> {
  const { data, info } = await sharp(`${DATA}boards/${photo}`)
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const pixels: Pixels = { width: info.width, height: info.height, channels: 3, data: new Uint8Array(data) };
  const place = register(marks, side);
  if (!place.ok) throw new Error(`the marks of ${name} give no place: ${place.code}`);
  const text = readFileSync(boardFileOf(photo)!, 'utf8');
  const onPhoto = ([left, lower, right, upper]: Box): Box => {
    const corners = [
      mapped(place.toPhoto, left, lower),
      mapped(place.toPhoto, right, lower),
      mapped(place.toPhoto, left, upper),
      mapped(place.toPhoto, right, upper),
    ];
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  };
  const elements = boardElements(text).filter((element) => isSeen(element, side));
  const truth = [
    ...elements.map((element) => ({ name: element.name, boxes: boxesOf(element).map(onPhoto) })),
    ...elements.flatMap((element) =>
      element.package.wide.map((box, i) => ({ name: `${element.name} ${i + 1}`, boxes: [onPhoto(placedBox(element, box))] })),
    ),
    ...largeHoles(text).map(([x, y, r], i) => ({ name: `hole ${i + 1}`, boxes: [onPhoto([x - r, y - r, x + r, y + r])] })),
  ];
  return { name, pixels, pxPerMm: place.pxPerMm, board, truth };
}

/** Copper on the photographed side: its own, or drilled through. */
const isSeen = ({ package: { copper, lands }, mirrored }: BoardElement, side: BoardSide): boolean =>
  copper !== undefined && (mirrored === (side === 'back') || lands === undefined);

function boxesOf(element: BoardElement): Box[] {
  const { copper, drawn, bare } = element.package;
  const both =
    drawn &&
    copper &&
    ([Math.min(copper[0], drawn[0]), Math.min(copper[1], drawn[1]), Math.max(copper[2], drawn[2]), Math.max(copper[3], drawn[3])] as const);
  return [copper, drawn, bare, both].filter((box): box is Box => box !== undefined).map((box) => placedBox(element, box));
}

/** Middle and radius, mm, of the holes of 2 mm and more that belong to no element. */
function largeHoles(text: string): [number, number, number][] {
  const plain = /<plain>([\s\S]*?)<\/plain>/.exec(text)?.[1] ?? '';
  return [...plain.matchAll(/<hole x="([^"]*)" y="([^"]*)" drill="([^"]*)"/g)]
    .map((match): [number, number, number] => [Number(match[1]), Number(match[2]), Number(match[3]) / 2])
    .filter(([, , r]) => r >= 1);
}

export const patchOf = ([left, top, right, bottom]: Box): Patch => ({ left, top, right, bottom });

/** The greatest share (intersection over union) of a box with a thing's boxes. */
export const overlapWith = (box: Box, { boxes }: OutlineTruth): number => Math.max(0, ...boxes.map((other) => overUnion(box, other)));

/** The greatest of those with any of the things. */
export const bestOverlap = (box: Box, truth: readonly OutlineTruth[]): number =>
  Math.max(0, ...truth.map((thing) => overlapWith(box, thing)));
