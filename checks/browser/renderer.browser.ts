import { afterAll, beforeAll, expect, it } from 'vitest';
import sharp from 'sharp';
import {
  cameraOver,
  openStudio,
  plantFaults,
  randomBoard,
  seenAt,
  takePhoto,
  type PlantedFault,
  type Studio,
} from '../../scripts/render-boards/index.mjs';
import { randomStream } from '../../src/core/numeric/index.ts';

let studio: Studio;
beforeAll(async () => {
  studio = (await openStudio())!;
});
afterAll(() => studio.close());

const board = randomBoard('drawn', randomStream('drawn board'));
const camera = cameraOver(board, { width: 640, height: 480 }, { tiltDeg: 6, towardDeg: 40, turnDeg: 5, fill: 0.85 });

async function greyPhoto(faults: readonly PlantedFault[]): Promise<Buffer> {
  const jpeg = await takePhoto(studio, {
    board,
    faults,
    camera,
    lamps: { angleDeg: 30, count: 1, warmth: 0 },
    random: randomStream('photo'),
  });
  return sharp(jpeg).greyscale().raw().toBuffer();
}

it('a drawn board shows its bright pads where the camera is said to see them, and its mask dark beside them', async () => {
  const grey = await greyPhoto([]);
  const at = (x: number, y: number): number => {
    const [u, v] = seenAt(camera, [x, y, 0]);
    return grey[Math.round(v) * 640 + Math.round(u)]!;
  };
  const points = board.parts.filter(({ kind }) => kind === 'TP');
  expect(points.length).toBeGreaterThan(3);
  const [pads, beside] = [points.map(({ x, y }) => at(x, y)), points.map(({ x, y }) => at(x, y + 1.2))];
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  expect(mean(pads)).toBeGreaterThan(mean(beside) + 15);
});

it('a planted fault changes the photo in the box that its truth names, and little elsewhere', async () => {
  const fault = plantFaults(board, 6, randomStream('drawn faults')).find(({ kind }) => kind === 'added' || kind === 'stain')!;
  const [before, after] = [await greyPhoto([]), await greyPhoto([fault])];
  const seen = fault.corners.map((corner) => seenAt(camera, corner));
  const [left, right] = [Math.min(...seen.map(([x]) => x)) - 6, Math.max(...seen.map(([x]) => x)) + 6];
  const [top, bottom] = [Math.min(...seen.map(([, y]) => y)) - 6, Math.max(...seen.map(([, y]) => y)) + 6];
  const change = { inside: 0, outside: 0, insidePx: 0, outsidePx: 0 };
  before.forEach((value, i) => {
    const [x, y] = [i % 640, Math.floor(i / 640)];
    const where = x >= left && x <= right && y >= top && y <= bottom ? 'inside' : 'outside';
    change[where] += Math.abs(value - after[i]!);
    change[`${where}Px`]++;
  });
  expect(change.inside / change.insidePx).toBeGreaterThan(4 * (change.outside / change.outsidePx));
});
