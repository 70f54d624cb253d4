import { readFileSync } from 'node:fs';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import {
  atStrictness,
  compare,
  fourPointMap,
  mapped,
  type PartPatch,
  type PictureLibrary,
  type Quad,
} from '../../src/core/vision/index.ts';
import { round, type Figure, type Progress } from './figure.ts';
import { BOARDS, boardPhoto, DATA, HAND, MARGIN_PX, throughJpeg } from './vision-cases.ts';
import { missing, type Box } from './vision-defects.ts';
import { photograph } from './vision-scene.ts';

const BOARD_FILE = `${DATA}boards/Metro-RP2350/Adafruit Metro RP2350.brd`;
/** The four mounting holes: middle in board millimetres (from the board file), and in px of the photograph (read off it by eye, to about 1 px). */
const HOLES_MM: Quad = [
  [66.04, 35.56],
  [66.04, 7.62],
  [13.97, 2.54],
  [15.24, 50.8],
];
const HOLES_PX: Quad = [
  [770.4, 277.4],
  [769.5, 524.1],
  [309.9, 566.7],
  [323.1, 141.7],
];
const PAIRS = 14;
const GONE = 4;

/** Parts taken off a photographed board by its placement: whether the proposal that meets one names it. */
export async function partFigures(library: PictureLibrary, progress: Progress): Promise<Figure[]> {
  progress(`Taking parts off a board, ${PAIRS} pairs …`);
  const { pixels } = await boardPhoto(BOARDS.measuring[0]);
  const parts = placedParts();
  const count = { found: 0, named: 0, gone: 0 };
  for (let i = 0; i < PAIRS; i++) {
    const random = randomStream(`parts gone, measuring ${i}`);
    const gone = drawn(parts, random);
    const board = gone.reduce((from, part) => missing(from, ...rectangleOf(part), random), pixels);
    const other = await throughJpeg(photograph(board, HAND, random).pixels);
    const result = compare([pixels], other, library, { parts });
    count.gone += gone.length;
    if (!result.ok) continue;
    for (const part of gone) {
      const hit = atStrictness(result.proposals, 0.5).find(
        ({ box }) =>
          Math.abs((box.left + box.right) / 2 - part.x) < part.widthPx / 2 + 2 &&
          Math.abs((box.top + box.bottom) / 2 - part.y) < part.heightPx / 2 + 2,
      );
      if (!hit) continue;
      count.found++;
      if (hit.part === part.part) count.named++;
    }
  }
  return [
    {
      figure: 'vision.part_right',
      value: round(count.named / Math.max(1, count.found)),
      unit: '',
      target: '≥ 0.95',
      reference: `${count.gone} parts taken off a board that nothing was tuned on, ${count.found} of them proposed at the default strictness; placement from its board file, registered by four mounting holes; ${parts.length} parts`,
    },
  ];
}

/** Parts that do not lie in one another, so that the truth has one name. */
function drawn(parts: readonly PartPatch[], random: RandomStream): PartPatch[] {
  const alone = parts.filter(
    (part) => Math.max(part.widthPx, part.heightPx) < 45 && !parts.some((other) => other !== part && meet(part, other)),
  );
  const chosen: PartPatch[] = [];
  while (chosen.length < GONE) {
    const part = alone[Math.floor(random() * alone.length)]!;
    if (!chosen.some((other) => Math.hypot(other.x - part.x, other.y - part.y) < 60)) chosen.push(part);
  }
  return chosen;
}

const meet = (a: PartPatch, b: PartPatch): boolean =>
  Math.abs(a.x - b.x) < (a.widthPx + b.widthPx) / 2 && Math.abs(a.y - b.y) < (a.heightPx + b.heightPx) / 2;

const rectangleOf = ({ x, y, widthPx, heightPx }: PartPatch): [number, number, number, number] => [
  Math.round(x - widthPx / 2) - 1,
  Math.round(y - heightPx / 2) - 1,
  Math.round(widthPx) + 2,
  Math.round(heightPx) + 2,
];

/** Parts on the upper side that stand along the axes, with the extent of their pads, in px of the cut photograph. */
function placedParts(): PartPatch[] {
  const text = readFileSync(BOARD_FILE, 'utf8');
  const extents = extentsByPackage(text);
  const map = fourPointMap(HOLES_MM, HOLES_PX)!;
  const [left, top] = BOARDS.measuring[0].region;
  return [...text.matchAll(/<element [^>]*>/g)].flatMap(([tag]): PartPatch[] => {
    const value = (name: string): string => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
    const box = extents.get(`${value('library')}/${value('package')}`);
    const turn = /^R(\d+)$/.exec(value('rot') || 'R0');
    if (!box || !turn || Number(turn[1]) % 90 !== 0 || !/^[A-Z]+\d+$/.test(value('name')) || value('name').startsWith('FD')) return [];
    const upright = Number(turn[1]) % 180 === 0;
    const [w, h] = upright ? [box[2] - box[0], box[3] - box[1]] : [box[3] - box[1], box[2] - box[0]];
    const [x, y] = mapped(map, Number(value('x')), Number(value('y')));
    const scale = Math.abs(mapped(map, Number(value('x')) + 1, Number(value('y')))[0] - x);
    return [{ part: value('name'), x: x - left + MARGIN_PX, y: y - top + MARGIN_PX, widthPx: w * scale, heightPx: h * scale, turnDeg: 0 }];
  });
}

/** The extent of the pads of each package about its origin, mm. */
function extentsByPackage(text: string): Map<string, Box> {
  const extents = new Map<string, Box>();
  for (const [, library, body] of text.matchAll(/<library name="([^"]*)"[^>]*>([\s\S]*?)<\/library>/g))
    for (const [, name, inner] of body!.matchAll(/<package name="([^"]*)"[^>]*>([\s\S]*?)<\/package>/g)) {
      const pads = [...inner!.matchAll(/<smd [^>]*?x="([^"]*)" y="([^"]*)" dx="([^"]*)" dy="([^"]*)"/g)].map((match) =>
        match.slice(1).map(Number),
      );
      if (pads.length === 0) continue;
      const low = (at: 0 | 1, size: 2 | 3): number => Math.min(...pads.map((pad) => pad[at]! - pad[size]! / 2));
      const high = (at: 0 | 1, size: 2 | 3): number => Math.max(...pads.map((pad) => pad[at]! + pad[size]! / 2));
      extents.set(`${library}/${name}`, [low(0, 2), low(1, 3), high(0, 2), high(1, 3)]);
    }
  return extents;
}
