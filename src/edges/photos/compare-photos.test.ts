import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { atStrictness, type Pixels } from '../../core/vision/index.ts';
import { drawnBoard } from '../../core/vision/testing/drawn-board.ts';
import { comparePhotos } from './compare-photos.ts';

const { pixels, parts } = drawnBoard('photos', 720, 540);
const jpeg = (picture: Pixels, turnDeg = 0): Promise<Buffer> => {
  const { width, height, channels, data } = picture;
  const drawn = sharp(data, { raw: { width, height, channels } }).rotate(turnDeg, { background: { r: 120, g: 118, b: 115 } });
  return drawn.jpeg({ quality: 92 }).toBuffer();
};
const reference = await jpeg(pixels);

/** Whether a polygon's box meets a part. */
function meets(outline: readonly (readonly [number, number])[], [x, y, w, h]: readonly [number, number, number, number]): boolean {
  const [xs, ys] = [outline.map(([u]) => u), outline.map(([, v]) => v)];
  return Math.min(...xs) < x + w && Math.max(...xs) > x && Math.min(...ys) < y + h && Math.max(...ys) > y;
}

describe('comparing two photos', () => {
  it('proposes the part that is missing first, on a photo turned by 25°', async () => {
    const other = await jpeg(drawnBoard('photos', 720, 540, [4]).pixels, 25);
    const result = await comparePhotos({ references: [reference], other });
    if (!result.ok) throw new Error(result.code);
    const [x, y, w, h] = parts[4]!;
    const { outline, chance } = result.proposals[0]!;
    const [xs, ys] = [outline.map(([px]) => px), outline.map(([, py]) => py)];
    expect(Math.min(...xs)).toBeLessThan(x + w / 2);
    expect(Math.max(...xs)).toBeGreaterThan(x + w / 2);
    expect(Math.min(...ys)).toBeLessThan(y + h / 2);
    expect(Math.max(...ys)).toBeGreaterThan(y + h / 2);
    expect(chance).toBeGreaterThan(0.5);
    expect(Math.abs(result.pose.turnDeg)).toBeCloseTo(25, 0);
  });

  it('proposes nothing that is likely on the same board in other light', async () => {
    const dim = { ...pixels, data: pixels.data.map((v, i) => v * (0.65 + (0.2 * (i % 2160)) / 2160) + 10) };
    const result = await comparePhotos({ references: [reference], other: await jpeg(dim, -10) });
    if (!result.ok) throw new Error(result.code);
    expect(atStrictness(result.proposals, 0.5)).toHaveLength(0);
  });

  it('finds a board from behind, and says that the photos show opposite sides', async () => {
    const mirrored = await sharp(reference).flop().jpeg().toBuffer();
    expect(await comparePhotos({ references: [reference], other: mirrored })).toMatchObject({ ok: false, code: 'opposite-sides' });
  });

  it('refuses another board and an empty photo, each with its reason', async () => {
    const stranger = await jpeg(drawnBoard('quite another board', 720, 540).pixels);
    expect(await comparePhotos({ references: [reference], other: stranger })).toMatchObject({ ok: false, code: 'too-different' });
    const blank = await jpeg({ ...pixels, data: new Uint8Array(pixels.data.length).fill(128) });
    expect(await comparePhotos({ references: [reference], other: blank })).toMatchObject({ ok: false, code: 'no-structure' });
  });

  it('answers that a photo cannot be decoded', async () => {
    const result = await comparePhotos({ references: [reference], other: new Uint8Array([255, 216, 255, 0, 1, 2]) });
    expect(result).toMatchObject({ ok: false, code: 'photo-corrupt' });
  });

  it('takes what was called normal for no difference, and still proposes another thing at that place', async () => {
    const [x, y, w, h] = parts[4]!;
    const without = await jpeg(drawnBoard('photos', 720, 540, [4]).pixels);
    const outline = [
      [x - 4, y - 4],
      [x + w + 4, y - 4],
      [x + w + 4, y + h + 4],
      [x - 4, y + h + 4],
    ].map(([u, v]) => [u! / 720, v! / 720] as const);
    const found = async (request: Parameters<typeof comparePhotos>[0]): Promise<number> => {
      const result = await comparePhotos(request);
      if (!result.ok) throw new Error(result.code);
      return Math.max(0, ...result.proposals.filter((each) => meets(each.outline, parts[4]!)).map(({ chance }) => chance));
    };
    const normal = { references: [reference], variations: [{ photo: without, outline }] };
    expect(await found({ ...normal, other: without })).toBeLessThan(0.1);
    const stained = { ...pixels, data: pixels.data.slice() };
    for (let row = y; row < y + h; row++)
      for (let at = 3 * (row * 720 + x); at < 3 * (row * 720 + x + w); at += 3) stained.data.set([250, 120, 30], at);
    expect(await found({ ...normal, other: await jpeg(stained) })).toBeGreaterThan(0.3);
  });

  it('stops when it is told to', async () => {
    expect(await comparePhotos({ references: [reference], other: reference }, { shouldStop: () => true })).toMatchObject({
      code: 'stopped',
    });
  });

  it('refuses a pattern that repeats instead of guessing where it lies', async () => {
    const data = new Uint8Array(720 * 540);
    for (let y = 0; y < 540; y++) for (let x = 0; x < 720; x++) data[y * 720 + x] = x % 40 < 20 !== y % 40 < 20 ? 220 : 40;
    const board: Pixels = { width: 720, height: 540, channels: 1, data };
    const moved: Pixels = { ...board, data: data.map((_, i) => data[(i + 23 + 720 * 17) % data.length]!) };
    const result = await comparePhotos({ references: [await jpeg(board)], other: await jpeg(moved, 9) });
    expect(result.ok).toBe(false);
  });
});
