import { describe, expect, it } from 'vitest';
import { pictureOf } from '../image/picture.ts';
import type { Pixels, Plane } from '../image/plane.ts';
import type { PartPatch } from './part-patch.ts';
import { lostParts, NO_PART, PART_FEATURES, partFeaturesOf } from './part-features.ts';
import { foundParts, settled } from './settle-parts.ts';

const PART: PartPatch = { part: 'U1', x: 60, y: 50, widthPx: 40, heightPx: 30, turnDeg: 0 };

/** A flat board with one part whose top bears a pattern, moved by `dx` px, or gone. */
function board(dx: number | 'gone'): Pixels {
  const [width, height] = [120, 100];
  const data = new Uint8Array(width * height).fill(90);
  if (dx === 'gone') return { width, height, channels: 1, data };
  for (let y = 37; y < 63; y++)
    for (let x = 42; x < 78; x++) data[y * width + x + dx] = 30 + ((x * x * 7 + y * 13) % 11) * 12 + (x > 55 && y < 50 ? 60 : 0);
  return { width, height, channels: 1, data };
}

const grey = (pixels: Pixels): Plane => pictureOf(pixels).grey;
const apart = (a: Plane, b: Plane): number => a.data.reduce((sum, value, i) => sum + Math.abs(value - b.data[i]!), 0) / a.data.length;

describe('Known parts in another picture', () => {
  it('that are merely seen from another side are put back to where they lie in the reference', () => {
    const [reference, other] = [board(0), board(5)];
    const found = foundParts(grey(reference), grey(other), [PART]);
    expect(found[0]!.fit.dx).toBeCloseTo(5, 0);
    const inPlace = settled(pictureOf(other), found).grey;
    expect(apart(grey(reference), inPlace)).toBeLessThan(0.25 * apart(grey(reference), grey(other)));
  });

  it('that are gone stay gone and become candidates of their own, as large as the part', () => {
    const found = foundParts(grey(board(0)), grey(board('gone')), [PART]);
    expect(settled(pictureOf(board('gone')), found).grey.data).toEqual(grey(board('gone')).data);
    const lost = lostParts(found, 120, 100, new Uint8Array(120 * 100).fill(1));
    expect(lost.map(({ left, top, right, bottom }) => [left, top, right, bottom])).toEqual([[40, 35, 80, 65]]);
  });

  it('that are found again as they were become no candidates', () => {
    const found = foundParts(grey(board(0)), grey(board(0)), [PART]);
    expect(lostParts(found, 120, 100, new Uint8Array(120 * 100).fill(1))).toEqual([]);
  });

  it('give a row of features as long as their names, also where there are none', () => {
    const found = foundParts(grey(board(0)), grey(board(5)), [PART]);
    const on = partFeaturesOf(found, { left: 50, top: 45, right: 60, bottom: 55, pixels: [1] }, false);
    expect(on).toHaveLength(PART_FEATURES.length);
    expect(on[PART_FEATURES.indexOf('is_on_part')]).toBe(1);
    expect(partFeaturesOf([], { left: 1, top: 1, right: 4, bottom: 4, pixels: [1] }, false)).toEqual(NO_PART);
  });
});
