import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DOTS, photographedDisplay } from '../../src/core/vision/testing/photographed-display.ts';
import type { ItemFile } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { serveBrokenTern } from './broken-tern.ts';

/** A second of a tone with a third harmonic, 16 bits at 44.1 kHz. */
function wav(hertz: number, level: number, third: number) {
  const rate = 44_100;
  const samples = Int16Array.from({ length: rate }, (_, i) => {
    const turn = (2 * Math.PI * hertz * i) / rate;
    return Math.round(32_767 * level * (Math.sin(turn) + third * Math.sin(3 * turn)));
  });
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + 2 * rate, 4);
  head.write('WAVEfmt ', 8);
  [16, 0x0001_0001, rate, 2 * rate, 0x0010_0002].forEach((value, i) => head.writeUInt32LE(value, 16 + 4 * i));
  head.write('data', 36);
  head.writeUInt32LE(2 * rate, 40);
  return { name: 'tone.wav', mimeType: 'audio/wav', buffer: Buffer.concat([head, Buffer.from(samples.buffer)]) };
}

async function photo(name: string, dots: readonly (readonly [number, number])[]) {
  const { width, height, data } = photographedDisplay('white', { dots }, { seed: name });
  const buffer = await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
  return { name: `${name}.png`, mimeType: 'image/png', buffer };
}

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('sound and picture on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  const file = (): Promise<ItemFile> => walk.ask<ItemFile>('/api/items/tern');
  const tests = () => walk.region('Tests and logs');

  beforeAll(async () => {
    server = await serveBrokenTern(home);
    walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/bench/tern');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  it('a tone of a known-good unit is the reference that a weaker one is told from', async () => {
    const fold = await walk.unfold(tests(), 'Sound check');
    const choose = (tone: ReturnType<typeof wav>) => fold.getByLabel('Or a recording (WAV)').setInputFiles(tone);
    await choose(wav(1000, 0.5, 0.01));
    await fold.getByText(/nothing to compare with/).waitFor();
    await fold.getByLabel(/known to be well/).check();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, 'Note the sound check'));
    await fold.getByLabel(/known to be well/).uncheck();
    await choose(wav(1000, 0.2, 0.08));
    await fold.getByText('8 dB quieter than the reference unit, distortion 7 % above it, pitch off by 0 %.').waitFor();
    await walk.noted(() => walk.press(fold, 'Note the sound check'));
    const { tests: noted, proof } = await file();
    expect(noted.map(({ verdict, known_good }) => [verdict, known_good])).toEqual([
      ['good', true],
      ['suspect', false],
    ]);
    expect(proof.steps.find(({ id }) => id === 'works.sound')!.measured.join(' ')).toContain('Quieter than the reference 8 dB');
    await choose({ name: 'letter.wav', mimeType: 'audio/wav', buffer: Buffer.from('this is a letter') });
    await fold.getByText(/no WAV file/).waitFor();
  });

  it('the microphone hears the same, and says so when it is not given', async () => {
    const fold = await walk.unfold(tests(), 'Sound check');
    await walk.page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        const context = new AudioContext();
        const [oscillator, gain, out] = [context.createOscillator(), context.createGain(), context.createMediaStreamDestination()];
        oscillator.frequency.value = 1000;
        gain.gain.value = 0.5;
        oscillator.connect(gain).connect(out);
        oscillator.start();
        return out.stream;
      };
    });
    await walk.press(fold, 'Listen by the microphone');
    await fold
      .getByRole('list', { name: 'Measured' })
      .getByText(/^Frequency (999\.9|1000)/)
      .waitFor();
    await walk.page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException('no', 'NotAllowedError');
      };
    });
    await walk.press(fold, 'Listen by the microphone');
    await fold.getByText(/microphone was not given/).waitFor();
  });

  it('a photo of the display shows its dead dots, which go into the grade', async () => {
    const fold = await walk.unfold(tests(), 'Display check');
    await fold.getByLabel('Dots across').fill(String(DOTS[0]));
    await fold.getByLabel('Dots down').fill(String(DOTS[1]));
    await fold.getByLabel('Photo of the display', { exact: true }).setInputFiles(
      await photo('two dead', [
        [30, 20],
        [60, 45],
      ]),
    );
    await fold.getByText(/^On white: 2 odd dots, 0 lines, 0 stains\./).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, 'Note the display check'));
    expect((await file()).tests.at(-1)).toMatchObject({ test: 'display', verdict: 'good' });
    const grade = await walk.unfold(walk.region('Grade and let go'), 'Grade');
    const found = await walk.unfold(grade, 'What was found, by each criterion');
    expect(await found.getByLabel(/^Dead pixels and lines/).inputValue()).toBe('2');
    expect(
      await grade.getByText(/^By the scale salvor-1: grade C, held back by sound against the reference unit, distortion/).count(),
    ).toBe(1);
    await walk.expectAccessible();
  });

  it('corners that are not found can be said', async () => {
    const fold = await walk.unfold(tests(), 'Display check');
    const dark = await sharp({ create: { width: 470, height: 370, channels: 3, background: '#101010' } })
      .png()
      .toBuffer();
    await fold.getByLabel('Photo of the display', { exact: true }).setInputFiles({ name: 'dark.png', mimeType: 'image/png', buffer: dark });
    await fold.getByText(/was not found on the photo|too dark/).waitFor();
    const corners = await walk.unfold(fold, 'Corners of the display');
    for (const [name, at] of [
      ['Upper left', '40, 34'],
      ['Upper right', '428, 28'],
      ['Lower right', '436, 332'],
      ['Lower left', '36, 340'],
    ] as const)
      await corners.getByLabel(name).fill(at);
    await walk.press(corners, 'Take these corners');
    await fold.getByText(/too dark/).waitFor();
  });

  it('the colour of a shell is measured under a grey card, against an unfaded one', async () => {
    const fold = await walk.unfold(tests(), 'Colour of the shell');
    const shell = async (colour: string) => {
      const card = await sharp({ create: { width: 300, height: 400, channels: 3, background: '#767676' } })
        .png()
        .toBuffer();
      const buffer = await sharp({ create: { width: 800, height: 400, channels: 3, background: colour } })
        .composite([{ input: card, left: 0, top: 0 }])
        .png()
        .toBuffer();
      await fold.getByLabel('Photo of the shell and a grey card').setInputFiles({ name: 'shell.png', mimeType: 'image/png', buffer });
      const picture = fold.getByRole('figure', { name: 'The photo with the shell and the grey card' });
      const { width, height } = (await picture.boundingBox())!;
      await picture.click({ position: { x: 0.2 * width, y: 0.5 * height } });
      await picture.click({ position: { x: 0.7 * width, y: 0.5 * height } });
    };
    await shell('#c8c8c8');
    await fold.getByLabel(/unfaded/).check();
    await walk.noted(() => walk.press(fold, 'Note the colour'));
    await shell('#c8c0a0');
    await fold.getByLabel(/unfaded/).uncheck();
    await fold.getByText(/^ΔE00 \d+(\.\d)? from an unfaded shell, yellower by/).waitFor();
    await walk.press(fold, 'One more place of the shell');
    const picture = fold.getByRole('figure', { name: 'The photo with the shell and the grey card' });
    const { width, height } = (await picture.boundingBox())!;
    await picture.click({ position: { x: 0.9 * width, y: 0.3 * height } });
    await fold.getByText(/^Worst at place 1 of 2: ΔE00 \d+(\.\d)? from an unfaded shell, yellower by/).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, 'Note the colour'));
    expect((await file()).tests.at(-1)).toMatchObject({ test: 'colour', verdict: 'bad' });
  });

  it('test pictures fill the screen, one after the other, and keys are counted', async () => {
    await walk.goto('/test-picture');
    await walk.expectAccessible();
    await walk.press(walk.region('Pictures'), 'White');
    const white = walk.page.getByRole('dialog', { name: 'Test picture: white' });
    await white.waitFor();
    await walk.press(white, /Next picture/);
    const black = walk.page.getByRole('dialog', { name: 'Test picture: black' });
    await expect.poll(() => black.evaluate((dialog) => getComputedStyle(dialog).backgroundColor)).toBe('rgb(0, 0, 0)');
    await walk.press(black, 'Close');
    await black.waitFor({ state: 'hidden' });
    await walk.press(walk.region('Keys'), 'Watch the keys');
    await walk.page.keyboard.press('KeyA');
    await walk.page.keyboard.press('KeyA');
    await walk.region('Keys').getByText('KeyA: 2 presses').waitFor();
    await walk.end();
  });
});
