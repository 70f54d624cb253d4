import { readFileSync } from 'node:fs';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { atStrictness, compare, mapped, type PartPatch, type PictureLibrary, register } from '../../src/core/vision/index.ts';
import { round, type Figure, type Progress } from './figure.ts';
import { boardElements } from './board-file.ts';
import { boardFileOf, MEASURED } from './outline-cases.ts';
import { BOARDS, boardPhoto, HAND, MARGIN_PX, throughJpeg } from './vision-cases.ts';
import { missing } from './vision-defects.ts';
import { photograph } from './vision-scene.ts';

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

/** Parts on the upper side that stand along the axes, with the extent of their lands, in px of the cut photograph. */
function placedParts(): PartPatch[] {
  const place = register(MEASURED.marks, MEASURED.side);
  if (!place.ok) throw new Error(`the marks give no place: ${place.code}`);
  const [left, top] = BOARDS.measuring[0].region;
  return boardElements(readFileSync(boardFileOf(MEASURED.photo)!, 'utf8')).flatMap((element): PartPatch[] => {
    const { name, x, y, turnDeg, mirrored } = element;
    const box = element.package.lands;
    if (!box || mirrored || turnDeg % 90 !== 0 || !/^[A-Z]+\d+$/.test(name) || name.startsWith('FD')) return [];
    const upright = turnDeg % 180 === 0;
    const [w, h] = upright ? [box[2] - box[0], box[3] - box[1]] : [box[3] - box[1], box[2] - box[0]];
    const [u, v] = mapped(place.toPhoto, x, y);
    const scale = Math.abs(mapped(place.toPhoto, x + 1, y)[0] - u);
    return [{ part: name, x: u - left + MARGIN_PX, y: v - top + MARGIN_PX, widthPx: w * scale, heightPx: h * scale, turnDeg: 0 }];
  });
}
