import sharp from 'sharp';
import { expect, it } from 'vitest';
import { drawnBoard } from '../../core/vision/testing/drawn-board.ts';
import { outlinesOnPhoto } from './outlines-on-photo.ts';

const { pixels } = drawnBoard('outlines', 480, 360);
const jpeg = await sharp(pixels.data, { raw: { width: 480, height: 360, channels: 3 } })
  .jpeg({ quality: 95 })
  .toBuffer();

it('outlines lie in px of the photo as it came, and only on the board that was asked about', async () => {
  const board = { left: 0, top: 0, right: 240, bottom: 360 };
  const found = await outlinesOnPhoto(jpeg, { pxPerMm: 10, board, leastChance: 0.1 });
  if (!found.ok) throw new Error(found.code);
  expect(found.outlines.length).toBeGreaterThan(0);
  expect(Math.max(...found.outlines.map(({ box }) => box.right))).toBeLessThanOrEqual(242);
  expect(found.outlines.map(({ reference }) => reference)).toEqual(found.outlines.map(() => null));
});

it('a photo that cannot be decoded is an answer, as is one that is too coarse', async () => {
  expect(await outlinesOnPhoto(new Uint8Array([255, 216, 255, 0, 1, 2]), { pxPerMm: 10 })).toMatchObject({
    ok: false,
    code: 'photo-corrupt',
  });
  expect(await outlinesOnPhoto(jpeg, { pxPerMm: 3 })).toMatchObject({ ok: false, code: 'too-coarse' });
});
