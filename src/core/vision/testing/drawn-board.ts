import { randomStream } from '../../numeric/index.ts';
import type { Pixels } from '../image/plane.ts';

/** A rectangle that stands for a part on a drawn board: left, top, width, height in px. */
export type DrawnPart = readonly [number, number, number, number];

/** A board drawn by seed: green ground, bright tracks, dark and pale parts with a mark each. `without` leaves parts out. */
export function drawnBoard(
  seed: string,
  width = 480,
  height = 360,
  without: readonly number[] = [],
): { pixels: Pixels; parts: DrawnPart[] } {
  const random = randomStream(seed);
  const data = new Uint8Array(width * height * 3);
  const fill = (x: number, y: number, w: number, h: number, colour: readonly number[]): void => {
    for (let v = Math.max(0, y); v < Math.min(height, y + h); v++)
      for (let u = Math.max(0, x); u < Math.min(width, x + w); u++) for (let c = 0; c < 3; c++) data[(v * width + u) * 3 + c] = colour[c]!;
  };
  fill(0, 0, width, height, [30, 90, 50]);
  for (let k = 0; k < 40; k++) {
    const [x, y, long] = [Math.floor(random() * width), Math.floor(random() * height), 30 + Math.floor(random() * 90)];
    if (random() < 0.5) fill(x, y, long, 3, [60, 140, 80]);
    else fill(x, y, 3, long, [60, 140, 80]);
  }
  const parts: DrawnPart[] = [];
  for (let k = 0; k < 30; k++) {
    const part: DrawnPart = [
      15 + Math.floor(random() * (width - 60)),
      15 + Math.floor(random() * (height - 60)),
      12 + Math.floor(random() * 26),
      10 + Math.floor(random() * 22),
    ];
    const colour = random() < 0.5 ? [28, 28, 30] : [200, 180, 150];
    const mark = Math.floor(random() * 6);
    if (parts.some(([x, y, w, h]) => part[0] < x + w + 5 && x < part[0] + part[2] + 5 && part[1] < y + h + 5 && y < part[1] + part[3] + 5))
      continue;
    parts.push(part);
    if (without.includes(parts.length - 1)) continue;
    const [x, y, w, h] = part;
    fill(x, y, w, h, colour);
    fill(x - 3, y + 2, 3, h - 4, [190, 190, 195]);
    fill(x + w, y + 2, 3, h - 4, [190, 190, 195]);
    fill(x + 2 + mark, y + 2, 3, 3, [230, 230, 230]);
  }
  return { pixels: { width, height, channels: 3, data }, parts };
}
