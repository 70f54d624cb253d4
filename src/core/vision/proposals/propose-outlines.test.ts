import { describe, expect, it } from 'vitest';
import { drawnBoard } from '../testing/drawn-board.ts';
import { VisionError } from '../vision-error.ts';
import { proposeOutlines } from './propose-outlines.ts';

const { pixels } = drawnBoard('outlines', 480, 360);

describe('outlines proposed on a photo', () => {
  it('lie within the photo, likeliest first, not on one another, and no less likely than was asked', () => {
    const answer = proposeOutlines(pixels, 10, { leastChance: 0.1 });
    if (!answer.ok) throw new Error(answer.code);
    expect(answer.outlines.length).toBeGreaterThan(0);
    const chances = answer.outlines.map(({ chance }) => chance);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(Math.min(...chances)).toBeGreaterThanOrEqual(0.1);
    for (const [i, { box, outline }] of answer.outlines.entries()) {
      expect(box.left >= 0 && box.top >= 0 && box.right <= pixels.width + 1 && box.bottom <= pixels.height + 1).toBe(true);
      expect(outline[0]).toEqual([box.left, box.top]);
      for (const other of answer.outlines.slice(i + 1)) {
        const w = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        const h = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
        const areas = [box, other.box].map((b) => (b.right - b.left) * (b.bottom - b.top));
        expect(Math.max(0, w) * Math.max(0, h)).toBeLessThanOrEqual(0.36 * Math.min(...areas));
      }
    }
  });

  it('are the same in a photo of twice the scale, in its own px', () => {
    const twice = { width: 960, height: 720, channels: pixels.channels, data: new Uint8Array(960 * 720 * pixels.channels) };
    for (let y = 0; y < 720; y++)
      for (let x = 0; x < 960; x++)
        for (let c = 0; c < pixels.channels; c++)
          twice.data[(y * 960 + x) * pixels.channels + c] = pixels.data[((y >> 1) * 480 + (x >> 1)) * pixels.channels + c]!;
    const [small, large] = [proposeOutlines(pixels, 10), proposeOutlines(twice, 20)];
    if (!small.ok || !large.ok) throw new Error('no outlines');
    expect(large.outlines.map(({ kind, box }) => [kind, box.left / 2, box.bottom / 2])).toEqual(
      small.outlines.map(({ kind, box }) => [kind, box.left, box.bottom]),
    );
  });

  it('are refused for a photo that is too coarse or a board that is too large, and stop when told to', () => {
    expect(proposeOutlines(pixels, 5)).toEqual({ ok: false, code: 'too-coarse', pxPerMm: 5, neededPxPerMm: 6 });
    expect(proposeOutlines({ width: 4000, height: 10, channels: 1, data: new Uint8Array(40_000) }, 8)).toMatchObject({
      ok: false,
      code: 'too-large',
      widthMm: 500,
    });
    expect(proposeOutlines(pixels, 10, { shouldStop: () => true })).toEqual({ ok: false, code: 'stopped' });
    expect(() => proposeOutlines(pixels, 0)).toThrow(VisionError);
  });
});
