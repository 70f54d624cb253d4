import { describe, expect, it } from 'vitest';
import { pictureOf } from '../image/picture.ts';
import { greyOf, planeOf, type Plane } from '../image/plane.ts';
import { drawnBoard } from '../testing/drawn-board.ts';
import { candidates, withoutCovered } from './candidates.ts';
import type { Proposal } from './compare.ts';
import { atStrictness } from './strictness.ts';
import { differenceMaps } from './difference-maps.ts';
import { excesses } from './excess.ts';
import { FEATURES, featuresOf } from './features.ts';
import { inLightOf } from './match-light.ts';
import { orientationCells, unexplained } from './orientation-cells.ts';
import { outlineOf } from './outline.ts';
import { findPatch, isMerelyShifted, partAt } from './part-patch.ts';
import { PHOTO } from './profile.ts';
import { zonesOf } from './zones.ts';

const { pixels, parts } = drawnBoard('difference');
const board = greyOf(pixels);
const all = new Uint8Array(board.data.length).fill(1);

function shifted(plane: Plane, dx: number, dy: number): Plane {
  const out = planeOf(plane.width, plane.height);
  for (let y = 0; y < plane.height; y++)
    for (let x = 0; x < plane.width; x++) {
      const u = Math.max(0, Math.min(plane.width - 1, x - dx));
      const v = Math.max(0, Math.min(plane.height - 1, y - dy));
      out.data[y * plane.width + x] = plane.data[v * plane.width + u]!;
    }
  return out;
}
const greatest = (plane: Plane): number => plane.data.reduce((most, v) => Math.max(most, Math.abs(v)), 0);

describe('what lies beyond a shift', () => {
  it('shows nothing for a shift within the radius, and something for a greater one', () => {
    const [one, two] = excesses(board, shifted(board, 2, 1), 2);
    expect(greatest(two!)).toBe(0);
    expect(greatest(one!)).toBeGreaterThan(50);
  });
});

describe('light', () => {
  it('is matched under a sloping lamp to within a few grey steps', () => {
    const lit = { ...board, data: board.data.map((v, i) => v * (0.7 + (0.5 * (i % board.width)) / board.width) + 12) };
    const back = inLightOf(board, lit);
    const off = back.data.reduce((sum, v, i) => sum + Math.abs(v - board.data[i]!), 0) / back.data.length;
    expect(off).toBeLessThan(4);
  });
});

describe('cells of edges', () => {
  it('are explained by content that is displaced by a cell, and not by content that is gone', () => {
    const seen = orientationCells(board, 8);
    const left = unexplained(seen, [orientationCells(shifted(board, 8, 8), 8)]);
    const inner = left.data.filter((_, i) => i % left.width < left.width - 2 && i < left.data.length - 2 * left.width);
    expect(Math.max(...inner)).toBeLessThan(0.1);
    const without = orientationCells(greyOf(drawnBoard('difference', 480, 360, [2]).pixels), 8);
    expect(greatest(unexplained(seen, [without]))).toBeGreaterThan(1);
  });
});

describe('candidates', () => {
  const missing = drawnBoard('difference', 480, 360, [2]).pixels;
  it('name the place of a part that is gone, and nothing else', () => {
    const maps = differenceMaps([pictureOf(pixels)], pictureOf(missing), all);
    const found = candidates(maps, PHOTO.seeding);
    const [x, y, w, h] = parts[2]!;
    expect(found.length).toBeGreaterThan(0);
    for (const { left, right, top, bottom } of found) {
      expect(Math.abs((left + right) / 2 - x - w / 2)).toBeLessThan(w / 2);
      expect(Math.abs((top + bottom) / 2 - y - h / 2)).toBeLessThan(h / 2);
    }
    expect(featuresOf(maps, found[0]!, PHOTO.unitGrey)).toHaveLength(FEATURES.length);
  });

  it('leave out what known-good boards differ in among themselves', () => {
    const maps = differenceMaps([pictureOf(pixels), pictureOf(missing)], pictureOf(missing), all);
    expect(candidates(maps, PHOTO.seeding)).toHaveLength(0);
  });

  it('of which several cover one another are one proposal, the likeliest', () => {
    const group = (left: number, right: number, chance: number) => ({ candidate: { left, right, top: 0, bottom: 9, pixels: [] }, chance });
    const kept = withoutCovered([group(0, 99, 0.3), group(10, 19, 0.9), group(200, 220, 0.1)]);
    expect(kept.map(({ chance }) => chance)).toEqual([0.9, 0.1]);
  });

  it('have a convex outline that holds all their pixels', () => {
    const component = { left: 2, top: 2, right: 5, bottom: 4, pixels: [2 * 10 + 2, 2 * 10 + 3, 3 * 10 + 4, 4 * 10 + 5] };
    const outline = outlineOf(component, 10);
    const area = outline.reduce((sum, [x, y], i) => {
      const [u, v] = outline[(i + 1) % outline.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0);
    expect(Math.abs(area)).toBeGreaterThanOrEqual(4);
    expect(outline).toContainEqual([2, 2]);
    expect(outline).toContainEqual([6, 5]);
  });
});

describe('known parts', () => {
  const [x, y, w, h] = parts[1]!;
  const part = { part: 'U1', x: x + w / 2, y: y + h / 2, widthPx: w, heightPx: h, turnDeg: 0 };

  it('seen a little displaced are found where they are and not held against the board', () => {
    const fit = findPatch(board, shifted(board, 3, -2), part, 8);
    expect(Math.hypot(fit.dx - 3, fit.dy + 2)).toBeLessThan(0.8);
    expect(fit.best).toBeGreaterThan(0.97);
    expect(isMerelyShifted(fit, part)).toBe(true);
  });

  it('that are gone are not found', () => {
    const without = greyOf(drawnBoard('difference', 480, 360, [1]).pixels);
    expect(isMerelyShifted(findPatch(board, without, part, 6), part)).toBe(false);
  });

  it('hold the points on them, turned as they are', () => {
    const turned = { ...part, widthPx: 40, heightPx: 10, turnDeg: 90 };
    expect(partAt([turned], part.x, part.y + 18)?.part).toBe('U1');
    expect(partAt([turned], part.x + 18, part.y)).toBeUndefined();
  });
});

describe('zones', () => {
  it('name what is not seen and what is blinded in one picture only', () => {
    const valid = all.slice();
    for (let v = 0; v < 64; v++) for (let u = 0; u < 64; u++) valid[v * board.width + u] = 0;
    const glare = { ...board, data: board.data.slice() };
    for (let v = 160; v < 224; v++) for (let u = 160; u < 224; u++) glare.data[v * board.width + u] = 255;
    const reasons = zonesOf(board, glare, board, valid, true).map(({ reason }) => reason);
    expect(reasons.filter((reason) => reason === 'not-seen')).toHaveLength(4);
    expect(reasons.filter((reason) => reason === 'glare')).toHaveLength(4);
  });
});

describe('strictness', () => {
  const proposal = (chance: number): Proposal => ({ outline: [], box: { left: 0, top: 0, right: 1, bottom: 1 }, kind: 'missing', chance });
  it('lets all through at nought and only what is all but sure at one', () => {
    const proposals = [0.999, 0.8, 0.4, 0.01].map(proposal);
    expect([0, 0.5, 1].map((strictness) => atStrictness(proposals, strictness).length)).toEqual([4, 2, 1]);
  });
});
