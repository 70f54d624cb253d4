import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ItemFile } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { serveBrokenTern } from './broken-tern.ts';

const REFERENCE = join(import.meta.dirname, '../../models/tern-tn20/photos/board-front.jpg');
const JUDGED_MS = 60_000;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('the camera for the board, on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;

  beforeAll(async () => {
    server = await serveBrokenTern(home);
    walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/bench/tern/camera');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  const camera = () => walk.region('Photo of the board');
  const verdict = () => walk.region('How it was taken');
  const photos = async (): Promise<ItemFile['photos']> => (await walk.ask<ItemFile>('/api/items/tern')).photos;

  it('says what makes a good photo, and that it gets no camera where it gets none', async () => {
    await walk
      .region('What makes a good photo')
      .getByText(/flatbed scanner/)
      .waitFor();
    await walk.page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException('no', 'NotAllowedError');
      };
    });
    await walk.press(camera(), 'Use the camera with the reference shining through');
    await camera()
      .getByRole('alert')
      .getByText(/This page gets no camera here/)
      .waitFor();
    await walk.expectAccessible();
  });

  it('shows the reference over what the camera sees, and takes a photo that is judged with its angle', async () => {
    await walk.page.evaluate(async () => {
      const picture = new Image();
      picture.src = '/api/models/tern-tn20/photos/board-front';
      await picture.decode();
      const canvas = document.createElement('canvas');
      Object.assign(canvas, { width: picture.naturalWidth, height: picture.naturalHeight });
      const draw = (): void => void canvas.getContext('2d')!.drawImage(picture, 0, 0);
      draw();
      setInterval(draw, 100);
      navigator.mediaDevices.getUserMedia = async () => canvas.captureStream(10);
    });
    await walk.press(camera(), 'Use the camera with the reference shining through');
    await camera().getByLabel('How much the reference shines through').fill('0.6');
    await expect
      .poll(() =>
        camera()
          .locator('.capture-ghost')
          .evaluate((ghost) => getComputedStyle(ghost).opacity),
      )
      .toBe('0.6');
    await expect
      .poll(() =>
        camera()
          .locator('video')
          .evaluate((video: HTMLVideoElement) => video.videoWidth),
      )
      .toBeGreaterThan(1000);
    await walk.expectAccessible();
    await walk.press(camera(), 'Take the photo');
    await verdict().getByRole('heading', { name: 'Good: keep it' }).waitFor({ timeout: JUDGED_MS });
    await verdict()
      .getByText(/^[01](\.\d)?° ± 1°/)
      .waitFor({ timeout: JUDGED_MS });
    await walk.expectAccessible();
    await walk.noted(() => walk.press(camera(), 'Keep it'));
    expect(await photos()).toMatchObject([{ side: 'board-front' }]);
  });

  it('says of a blurred photo from a file that it is to be taken again, which nobody must', async () => {
    const blurred = await sharp(readFileSync(REFERENCE)).blur(6).jpeg().toBuffer();
    await camera().locator('input[type=file]').setInputFiles({ name: 'blurred.jpg', mimeType: 'image/jpeg', buffer: blurred });
    await verdict().getByRole('heading', { name: 'Take it again' }).waitFor({ timeout: JUDGED_MS });
    await verdict()
      .getByText(/It is blurred/)
      .waitFor();
    await walk.press(camera(), 'Take it again');
    expect(await photos()).toHaveLength(1);
    await walk.end();
  });
});
