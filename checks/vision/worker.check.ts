import { beforeAll, describe, expect, it } from 'vitest';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { drawnBoard } from '../../src/core/vision/testing/drawn-board.ts';
import type { openPhotoComparer } from '../../src/edges/photos/photo-comparer.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
let open: typeof openPhotoComparer;
let photo: Uint8Array;

beforeAll(async () => {
  open = (await import(pathToFileURL(join(root, 'dist/edges/photos/photo-comparer.js')).href)).openPhotoComparer;
  const { pixels } = drawnBoard('worker');
  photo = await sharp(pixels.data, { raw: { width: pixels.width, height: pixels.height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
});

describe('the worker that compares photos', () => {
  it('tells its steps in order, answers, stops when it is cancelled, and judges a pose', async () => {
    const comparer = open();
    const steps: string[] = [];
    const request = { references: [photo], other: photo };
    const result = await comparer.compare(request, (step) => steps.push(step)).done;
    expect(result.ok).toBe(true);
    expect(steps).toEqual(['decoding', 'aligning', 'laying-together', 'comparing', 'judging']);
    const second = comparer.compare(request);
    second.cancel();
    expect(await second.done).toEqual({ ok: false, code: 'stopped' });
    expect(await comparer.judge(photo, photo)).toMatchObject({ ok: true, against: { ok: true, pose: { tiltDeg: expect.closeTo(0, 0) } } });
    await comparer.close();
  });
});
