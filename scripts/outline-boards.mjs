import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { parse } from 'yaml';
import { boardRelief } from './demo-photos/board-relief.mjs';
import { photograph } from './demo-photos/camera.mjs';
import { layoutBoard } from './demo-photos/layout-board.mjs';
import { padsOf } from './demo-photos/pads-of.mjs';
import { KINDS } from './demo-photos/part-kinds.mjs';
import { barePad } from './demo-photos/part-shapes.mjs';
import { box, disc } from './demo-photos/relief.mjs';
import { textPath, textWidth } from './demo-photos/stroke-font.mjs';
import { ROOT } from './run.mjs';

const MODELS = ['tern-tn10', 'tern-tn20', 'corrie-cp4'];
const MASKS = ['black', 'green', 'blue', 'ochre', 'white', 'black'];
const GROUNDS = ['paper', 'mat'];
const FILL = 0.94;
/** Share of the small parts that are left off, so that bare lands are seen too. */
const LEFT_OFF = 0.06;
/** Pixels to a millimetre of the photos. */
const PX_PER_MM = { least: 7.5, most: 15 };
const SILK = '#ecedee';
/** Room around the board in a drawing, mm (as the drawing takes it). */
const MARGIN_MM = 7;

const goldPad = (pad) => ({ ...pad, gold: true });

/** Lands of a part that was never fitted. */
const bareLands = (kind) => ({
  ...KINDS[kind],
  body: undefined,
  draw: (relief) => KINDS[kind].pads.map(goldPad).forEach((pad) => barePad(relief, pad)),
});

/** Drilled pads in a line, without a part in them. */
const DRILLED = {
  court: [10.4, 2.6],
  body: undefined,
  pads: Array.from({ length: 4 }, (_, i) => ({ x: (i - 1.5) * 2.54, y: 0, w: 1.6, h: 1.6, round: true, gold: true })),
  draw: (relief) =>
    DRILLED.pads.forEach((pad) => {
      barePad(relief, pad);
      relief.put(disc(pad.x, pad.y, 0.5), { fill: '#15130f', h: 0, gloss: 0 });
    }),
};

/** An invented board of seed `seed`: its photo and, in px of it, the boxes of its parts, test points, bare lands and holes. Random numbers come from the caller. */
export async function drawOutlineBoard(seed, randomStream) {
  const random = randomStream(`outline board ${seed}`);
  const file = parse(readFileSync(join(ROOT, 'models', MODELS[seed % MODELS.length], 'model.yaml'), 'utf8'));
  const layout = layoutBoard(file, random);
  Object.assign(KINDS, { bareSmall: bareLands('resistor'), bareChip: bareLands('chip8'), drilled: DRILLED });
  layout.parts = layout.parts.map((part) => ({ ...part, kind: kindNow(part, random) }));
  const relief = boardRelief(layout, { mask: MASKS[seed % MASKS.length], title: `BOARD ${seed}`, random });
  printMore(relief, layout, random);
  const pose = { fill: FILL, barrel: 0 };
  const jpeg = await photograph(relief, { pose, ground: GROUNDS[seed % 2], random });
  const { data, info } = await asTaken(jpeg, layout, random);
  const pxPerMm = (FILL * info.width) / (layout.width + 2 * MARGIN_MM);
  const onPhoto = ([left, top, right, bottom]) => [
    info.width / 2 + (left - layout.width / 2) * pxPerMm,
    info.height / 2 + (top - layout.height / 2) * pxPerMm,
    info.width / 2 + (right - layout.width / 2) * pxPerMm,
    info.height / 2 + (bottom - layout.height / 2) * pxPerMm,
  ];
  const holes = layout.holes.map(({ x, y }, i) => ({
    name: `hole ${i}`,
    boxes: [2.4, 1.3].map((r) => onPhoto([x - r, y - r, x + r, y + r])),
  }));
  const parts = layout.parts.map((part) => ({ name: part.label ?? part.kind, boxes: boxesOf(part).map(onPhoto) }));
  return {
    name: `board ${seed}`,
    pixels: { width: info.width, height: info.height, channels: 3, data: new Uint8Array(data) },
    pxPerMm,
    board: onPhoto([0, 0, layout.width, layout.height]),
    truth: [...parts, ...holes],
  };
}

/** The photo as a simpler camera gives it: fewer pixels to the millimetre, on every second one edges sharpened as cameras do, other contrast. */
function asTaken(jpeg, layout, random) {
  const pxPerMm = PX_PER_MM.least + (PX_PER_MM.most - PX_PER_MM.least) * random();
  const photo = sharp(jpeg).resize({ width: Math.round(((layout.width + 2 * MARGIN_MM) * pxPerMm) / FILL) });
  const gain = 0.85 + 0.5 * random();
  const lit = photo.linear(gain, 128 * (1 - gain) * random());
  return (random() < 0.5 ? lit.sharpen({ sigma: 0.8 }) : lit).raw().toBuffer({ resolveWithObject: true });
}

const WORDS = [
  'RESET',
  'BOOT',
  'SDA',
  'SCL',
  'GND',
  '5V',
  '3V3',
  'TX',
  'RX',
  'A0',
  'A1',
  'D7',
  'DEBUG',
  'LINE',
  'REV B',
  'ON',
  'OFF',
  '12',
  '13',
];
const PRINTED = 40;

/** Words, bars and discs of print on free places, of many sizes and turns, as boards bear them. */
function printMore(relief, layout, random) {
  const taken = [...layout.parts, ...layout.holes].map((part) => {
    const court = KINDS[part.kind]?.court ?? [5, 5];
    return { x: part.x, y: part.y, reach: Math.max(...court) / 2 };
  });
  for (let k = 0; k < PRINTED; k++) {
    const size = 0.7 + 1.8 * random() ** 2;
    const text = WORDS[Math.floor(random() * WORDS.length)];
    const reach = textWidth(text, size) / 2 + 0.3;
    const [x, y] = [reach + random() * (layout.width - 2 * reach), reach + random() * (layout.height - 2 * reach)];
    if (taken.some((other) => Math.hypot(other.x - x, other.y - y) < other.reach + reach)) continue;
    taken.push({ x, y, reach });
    const paint = { fill: SILK, h: 0.06, gloss: 0.3 };
    const shape = random();
    relief.group(x, y, [0, 0, 90, 45, -30][Math.floor(random() * 5)], () => {
      if (shape < 0.75) relief.put(textPath(text, -reach + 0.3, size / 2, size), { ...paint, width: size * (0.12 + 0.12 * random()) });
      else if (shape < 0.88) relief.put(box(0, 0, 2 * reach, 0.15 + 0.5 * random()), paint);
      else relief.put(disc(0, 0, Math.min(1.2, reach * 0.6)), random() < 0.5 ? paint : { ...paint, width: 0.25 });
    });
  }
}

function kindNow({ kind }, random) {
  if (kind === 'plug' && random() < 0.5) return 'drilled';
  if (kind === 'chip8' && random() < 0.3) return 'bareChip';
  return (kind === 'resistor' || kind === 'capacitor') && random() < LEFT_OFF ? 'bareSmall' : kind;
}

/** Boxes of a part on its board, mm: its lands and its body together, and its lands alone. */
function boxesOf(part) {
  const pads = padsOf(part);
  const { body } = KINDS[part.kind];
  const lies = part.turn % 180 === 0;
  const shape = body && { x: part.x, y: part.y, w: lies ? body.w : body.h, h: lies ? body.h : body.w };
  return [[...pads, ...(shape ? [shape] : [])], pads].filter((shapes) => shapes.length > 0).map(around);
}

const around = (shapes) => [
  Math.min(...shapes.map(({ x, w }) => x - w / 2)),
  Math.min(...shapes.map(({ y, h }) => y - h / 2)),
  Math.max(...shapes.map(({ x, w }) => x + w / 2)),
  Math.max(...shapes.map(({ y, h }) => y + h / 2)),
];
