import { describe, expect, it } from 'vitest';
import { greyOf, planeOf, type Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';
import type { Homography } from '../picture-library.ts';
import { drawnBoard } from '../testing/drawn-board.ts';
import { agreementOf } from './agreement.ts';
import { fourPointMap } from './four-point-map.ts';
import { composed, cornersApart, IDENTITY, inverted, isPlausible, mapped, rescaled, warpedByHomography } from './homography.ts';
import { boardQuad } from './outline-map.ts';
import { poseOf } from './pose.ts';
import { pairPyramid, refinedMap } from './refine-map.ts';
import { smoothFlow } from './smooth-flow.ts';

const board = greyOf(drawnBoard('align').pixels);
const LEANING: Homography = [0.98, -0.03, 9, 0.04, 1.01, -6, 4e-5, -3e-5, 1];

describe('maps of the plane', () => {
  it('composed with their own inverse leave every corner where it was', () => {
    expect(cornersApart(composed(LEANING, inverted(LEANING)!), IDENTITY, 480, 360)).toBeLessThan(1e-9);
  });

  it('mean the same at half size, pixel centres counted in', () => {
    const half = rescaled(LEANING, 0.5, 0.5);
    const [x, y] = mapped(LEANING, 100.5, 60.5);
    const [u, v] = mapped(half, 50, 30);
    expect(2 * u + 0.5).toBeCloseTo(x, 9);
    expect(2 * v + 0.5).toBeCloseTo(y, 9);
  });

  it('are not plausible when they mirror or collapse the picture', () => {
    expect(isPlausible(LEANING, 480, 360)).toBe(true);
    expect(isPlausible([-1, 0, 480, 0, 1, 0, 0, 0, 1], 480, 360)).toBe(false);
    expect(isPlausible([0.05, 0, 0, 0, 0.05, 0, 0, 0, 1], 480, 360)).toBe(false);
  });
});

describe('a map from four points', () => {
  it('takes each to its partner, and is none where three lie on a line', () => {
    const from = [
      [0, 0],
      [50, 0],
      [55, 40],
      [-3, 42],
    ] as const;
    const to = [
      [110, 80],
      [600, 95],
      [640, 520],
      [90, 500],
    ] as const;
    const map = fourPointMap(from, to)!;
    from.forEach(([x, y], i) => {
      const [u, v] = mapped(map, x, y);
      expect(u).toBeCloseTo(to[i]![0], 6);
      expect(v).toBeCloseTo(to[i]![1], 6);
    });
    expect(
      fourPointMap(
        [
          [0, 0],
          [1, 1],
          [2, 2],
          [3, 3],
        ],
        to,
      ),
    ).toBeNull();
  });
});

describe('refining a map', () => {
  it('brings a map that is some pixels off to within a tenth of a pixel', () => {
    const other = warpedByHomography(board, inverted(LEANING)!, 500, 380);
    const start: Homography = [0.985, -0.028, 6, 0.036, 1.0, -3, 4e-5, -3e-5, 1];
    expect(cornersApart(start, LEANING, 480, 360)).toBeGreaterThan(3);
    const found = refinedMap(pairPyramid(board, other, 3), start, 3, 0);
    expect(cornersApart(found, LEANING, 480, 360)).toBeLessThan(0.15);
  });
});

describe('smooth displacement', () => {
  const bent = (plane: Plane): Plane => {
    const out = planeOf(plane.width, plane.height);
    for (let y = 0, i = 0; y < plane.height; y++)
      for (let x = 0; x < plane.width; x++, i++) out.data[i] = valueAt(plane, x - 3 * Math.sin(x / 150), y - 2 * Math.cos(y / 120));
    return out;
  };

  it('follows a gentle bend to a quarter of a pixel where there are edges', () => {
    const field = smoothFlow(board, bent(board));
    const errors: number[] = [];
    for (let r = 5; r < field.dx.height - 5; r++)
      for (let c = 5; c < field.dx.width - 5; c++) {
        const i = r * field.dx.width + c;
        errors.push(Math.hypot(field.dx.data[i]! - 3 * Math.sin((c * 8) / 150), field.dy.data[i]! - 2 * Math.cos((r * 8) / 120)));
      }
    errors.sort((a, b) => a - b);
    expect(errors[Math.floor(errors.length / 2)]!).toBeLessThan(0.25);
  });

  it('moves no other part by half a pixel because one is missing', () => {
    const { pixels, parts } = drawnBoard('align', 480, 360, [3]);
    const { dx, dy, step } = smoothFlow(board, greyOf(pixels));
    const others = parts.filter((_, i) => i !== 3);
    const moved = others.map(([x, y, w, h]) => {
      const [column, row] = [(x + w / 2) / step, (y + h / 2) / step];
      return Math.hypot(valueAt(dx, column, row), valueAt(dy, column, row));
    });
    expect(moved.length).toBeGreaterThan(10);
    expect(Math.max(...moved)).toBeLessThan(0.5);
  });
});

describe('agreement', () => {
  const all = new Uint8Array(board.data.length).fill(1);
  it('is high for a picture and itself in other light, and low for another board', () => {
    const darker = { ...board, data: board.data.map((v) => 0.6 * v + 20) };
    const stranger = greyOf(drawnBoard('another board').pixels);
    expect(agreementOf(board, darker, all, 2).fitting).toBeGreaterThan(0.98);
    expect(agreementOf(board, stranger, all, 2).fitting).toBeLessThan(0.4);
  });
});

describe('pose', () => {
  it('tells a lean of 8° to a tenth of a degree when the focal length is known', () => {
    const tilt = (8 * Math.PI) / 180;
    const focal = 400;
    const middle: Homography = [1, 0, 239.5, 0, 1, 179.5, 0, 0, 1];
    const back: Homography = [1, 0, -239.5, 0, 1, -179.5, 0, 0, 1];
    const h = composed(middle, composed([Math.cos(tilt), 0, 0, 0, 1, 0, Math.sin(tilt) / focal, 0, 1], back));
    const pose = poseOf(h, 480, 360, focal);
    expect(pose.tiltRightDeg).toBeCloseTo(8, 1);
    expect(pose.tiltDownDeg).toBeCloseTo(0, 6);
  });
});

describe('the outline of a board', () => {
  it('gives its four corners on an even table, and nothing where it reaches the border', () => {
    const table = planeOf(400, 300, 90);
    for (let y = 50; y < 230; y++) for (let x = 80; x < 330; x++) table.data[y * 400 + x] = 200;
    const quad = boardQuad(table)!;
    for (const [x, y] of [
      [80, 50],
      [329, 50],
      [329, 229],
      [80, 229],
    ] as const)
      expect(Math.min(...quad.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(3);
    for (let y = 0; y < 230; y++) for (let x = 80; x < 330; x++) table.data[y * 400 + x] = 200;
    expect(boardQuad(table)).toBeUndefined();
  });
});
