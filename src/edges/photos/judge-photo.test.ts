import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { drawnBoard } from '../../core/vision/testing/drawn-board.ts';
import { judgePhoto } from './judge-photo.ts';

const { pixels } = drawnBoard('judged', 900, 680);
const photo = sharp(pixels.data, { raw: { width: 900, height: 680, channels: 3 } });
const reference = await photo.clone().jpeg({ quality: 92 }).toBuffer();

describe('judging a photo', () => {
  it('tells how far it is turned against the reference, at the size at which both are compared', async () => {
    const turned = await photo.clone().rotate(12, { background: '#777777' }).jpeg({ quality: 92 }).toBuffer();
    const judged = await judgePhoto(turned, reference);
    if (!judged.ok || !judged.against?.ok) throw new Error(JSON.stringify(judged));
    expect(judged.quality.troubles).toEqual([]);
    expect(Math.abs(judged.against.pose.turnDeg)).toBeCloseTo(12, 0);
    expect(judged.against.pose.tiltDeg).toBeLessThan(1);
    expect(judged.against.reference).toMatchObject({ width: 900, toOriginal: expect.closeTo(1, 5) });
  });

  it('judges it alone where there is no reference, and answers that a file is no photo', async () => {
    expect(await judgePhoto(reference, null)).toMatchObject({ ok: true, against: null });
    expect(await judgePhoto(new Uint8Array([255, 216, 255, 0, 1, 2]), null)).toMatchObject({ ok: false, code: 'photo-corrupt' });
  });
});
