import sharp from 'sharp';
import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const socket = (name: string, pitch: number) => ({
  name: `${name}.kicad_mod`,
  mimeType: 'text/plain',
  buffer: Buffer.from(
    `(footprint "${name}" ${[0, 1, 2].map((i) => `(pad "${i + 1}" smd rect (at ${i * pitch} 0) (size 0.5 1.2) (layers "F.Cu"))`).join(' ')})`,
  ),
});
/** Lands that share a pin, and two pegs for which there is no hole. */
const shelled = {
  ...socket('shelled', 0.8),
  buffer: Buffer.from(
    `(footprint "shelled" ${[0, 9].map((x) => `(pad "S1" smd rect (at ${x} 5) (size 1 1) (layers "F.Cu")) (pad "" np_thru_hole circle (at ${x} 8) (size 1 1) (drill 1) (layers "*.Cu"))`).join(' ')})`,
  ),
};
const csv = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

/** A photo at 50 px a mm: a ruler line of 10 mm, and three pads 0.8 mm apart, 0.5 by 1.2 mm. */
const PX = 50;
const FIRST = { x: 300, y: 300 };
const pad = (i: number) =>
  `<rect x="${FIRST.x + i * 0.8 * PX - 0.25 * PX}" y="${FIRST.y - 0.6 * PX}" width="${0.5 * PX}" height="${1.2 * PX}" fill="#d9b65c"/>`;
const PHOTO = `<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600"><rect width="800" height="600" fill="#1d5c3a"/>
  <path d="M100 100h${10 * PX}" stroke="#fff" stroke-width="3"/>${[0, 1, 2].map(pad).join('')}</svg>`;

const FEET = [
  ['Over the feet, from tip to tip', '5.8', '6.2'],
  ['Length of a foot on its pad', '0.4', '1.27'],
  ['Width of a foot', '0.31', '0.51'],
] as const;

let browser: Browser;
let server: ServerProcess;
let photo: Buffer;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home, ['--empty']);
  photo = await sharp(Buffer.from(PHOTO)).png().toBuffer();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

/** Clicks a place of the photo as it is shown now. */
async function clickPhoto(stage: Locator, x: number, y: number): Promise<void> {
  const svg = stage.locator('svg');
  const [image, whole] = [(await stage.locator('image').boundingBox())!, (await svg.boundingBox())!];
  await svg.click({ position: { x: image.x - whole.x + (x / 800) * image.width, y: image.y - whole.y + (y / 600) * image.height } });
}

const answers = (fit: Locator): Promise<string[]> => fit.locator('.fits > li > details > summary').allInnerTexts();

describe.each(SCREENS)('does it fit, on $name', (screen) => {
  it('shows which of several files fits, the best first, with a picture, and which file cannot be read', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/drawer');
    const fit = walk.region('Does it fit?');
    await fit.getByLabel('Pads of the place on the board').setInputFiles(socket('place', 0.8));
    const bad = csv('bad.csv', 'pin,x_mm\n1,2');
    await fit.getByLabel('Parts that may go there').setInputFiles([socket('wide', 1), shelled, socket('same', 0.8), bad]);
    await fit.locator('.fits summary').first().waitFor();
    expect((await answers(fit)).toSorted()).toEqual([
      'same.kicad_mod: It fits.',
      'shelled.kicad_mod: It does not line up.',
      'wide.kicad_mod: It does not line up.',
    ]);
    expect((await answers(fit))[0]).toBe('same.kicad_mod: It fits.');
    const picture = fit.getByRole('img', { name: 'same.kicad_mod over place.kicad_mod: It fits.' });
    expect(await picture.evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth > 0)).toBe(true);
    expect(await fit.getByRole('alert').innerText()).toContain('bad.csv cannot be read: line 1, header has no column "y_mm"');
    await walk.expectAccessible();
    await walk.end();
  });

  it('measures the place on a photo, by clicks and by keys, and asks what pads do not say', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/drawer');
    const fit = walk.region('Does it fit?');
    const desk = await walk.unfold(fit, 'Measure the pads of the place on a photo');
    await desk.getByLabel('Photo, taken straight from above').setInputFiles({ name: 'board.png', mimeType: 'image/png', buffer: photo });
    const stage = desk.getByRole('group', { name: /^Photo: arrow keys/ });
    await desk.getByLabel('Distance between the two points (mm)').fill('10');
    await clickPhoto(stage, 100, 100);
    await clickPhoto(stage, 600, 100);
    await desk.getByText(/1 pixel is 0\.0(199|200|201)/).waitFor();
    await walk.press(desk, 'Mark a pad');
    await clickPhoto(stage, FIRST.x - 0.25 * PX, FIRST.y - 0.6 * PX);
    await clickPhoto(stage, FIRST.x + 0.25 * PX, FIRST.y + 0.6 * PX);
    await walk.press(desk, 'Mark a row');
    await desk.getByLabel('Pads in the row').fill('3');
    await clickPhoto(stage, FIRST.x, FIRST.y);
    await clickPhoto(stage, FIRST.x + 1.6 * PX, FIRST.y);
    expect(await desk.getByLabel(/^Pin of pad/).evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value))).toEqual([
      '1',
      '2',
      '3',
    ]);
    await stage.focus();
    await stage.press('ArrowRight');
    await stage.press('Enter');
    await desk.getByText('Now the middle of the last pad.').waitFor();
    await walk.press(desk, 'Take the last mark back');
    await desk.getByLabel('Name of the place').fill('J4 of the Tern');
    await walk.press(desk, 'Use these pads as the place');
    await fit.getByLabel('Parts that may go there').setInputFiles([socket('wide', 1), socket('same', 0.8)]);
    await fit.locator('.fits summary').first().waitFor();
    expect(await answers(fit)).toEqual(['same.kicad_mod: It fits.', 'wide.kicad_mod: It does not line up.']);
    const best = fit.locator('.fits > li').first();
    const told = await walk.unfold(best.locator('> details'), 'Tell what the pads do not say');
    await told.getByLabel('Its height (mm)').fill('2.5');
    await told.getByLabel('Room above it (mm)').fill('2');
    await walk.press(told, 'Use this in the answer');
    await fit.getByText('It is 0.5 mm too high for the room there.').first().waitFor();
    await walk.expectAccessible();
    await walk.end();
  });

  it('lays a part from the numbers of its drawing, those of the drawer and those of a list over the place', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    const bag = `bag-${screen.width}`;
    const event = {
      kind: 'part-bought',
      body: { bag_id: bag, part: 'socket', name: `Sockets ${screen.width}`, count: 4, price_minor: 200, currency: 'GBP' },
    };
    await fetch(`${server.url}/api/events`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ events: [event] }),
    });
    await walk.goto('/drawer');
    const fit = walk.region('Does it fit?');
    await fit
      .getByLabel('Pads of the place on the board')
      .setInputFiles(
        csv(
          'so8.csv',
          `pin,x_mm,y_mm,w_mm,h_mm\n${[0, 1, 2, 3].flatMap((i) => [`${i + 1},-2.47,${1.905 - 1.27 * i},1.97,0.6`, `${8 - i},2.47,${1.905 - 1.27 * i},1.97,0.6`]).join('\n')}`,
        ),
      );
    const drawing = await walk.unfold(fit, 'Type in the numbers of a part’s drawing');
    await drawing.getByLabel('Name of the part').fill('Eight feet');
    await drawing.getByLabel('What it is').selectOption('chip');
    await drawing.getByLabel('Code of its size, if it has one').fill('0603');
    await walk.press(drawing, /^1\.6 × 0\.8 mm/);
    expect(await drawing.getByLabel('Pins in all').inputValue()).toBe('2');
    await drawing.getByLabel('What it is').selectOption('gull-wing');
    await drawing.getByLabel('Pins in all').fill('8');
    for (const [legend, least, most] of FEET) {
      const limits = drawing.getByRole('group', { name: legend });
      await limits.getByLabel('Smallest (mm)').fill(least);
      await limits.getByLabel('Largest (mm)').fill(most);
    }
    await drawing.getByText('6.90 mm over all, 3.00 mm between them, 0.60 mm wide').waitFor();
    await walk.press(drawing, 'Lay this part over the place');
    await fit.locator('.fits summary').first().waitFor();
    expect(await answers(fit)).toEqual(['Eight feet: It fits.']);
    await fit.getByRole('region', { name: 'Eight feet, pad by pad, table' }).getByText('good').first().waitFor();
    const keep = fit.locator('.keep-terminals');
    await keep.getByLabel('These are the terminals of').selectOption(bag);
    await walk.noted(() => walk.press(keep, 'Keep them with the bag'));
    await fit.getByLabel('Look through the drawer').check();
    const list = await walk.unfold(fit, 'Look through a supplier’s list');
    await list
      .getByLabel('Or paste it')
      .fill('part,sides,pins,pitch_mm,span_min_mm,foot_min_mm,width_min_mm,price\nNarrow,2,8,0.65,5.8,0.6,0.3,0.35\nOdd,3,8,1,5,1,0.3,1');
    await expect
      .poll(async () => (await answers(fit)).filter((answer) => !answer.includes('Sockets') || answer.includes(String(screen.width))))
      .toEqual(['Eight feet: It fits.', `Sockets ${screen.width}, 4 in the drawer: It fits.`, 'Narrow, 0.35: It does not line up.']);
    expect(await list.getByRole('alert').innerText()).toContain('Left out: line 3, sides is none of 1, 2, 4');
    await walk.expectAccessible();
    await walk.end();
  });
});
