import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { BoardMarks } from '../../src/bench/views/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { kindOf, PART_KINDS } from '../../src/apps/web/grow/part-kinds.ts';
import { splitRef } from '../../src/apps/web/grow/editor-part.ts';
import { boardStage, clickPixel, onPicture, recordEvents, TERN_CORNERS, TERN_PHOTO, UNKNOWN_PLAYER } from '../browser/grow-board.ts';
import { openBrowser } from './browser.ts';
import { round, type Figure, type Progress } from './figure.ts';
import { MarkingHand } from './marking-hand.ts';
import { startServer, temporaryHome } from './server-process.ts';

const ROOT = join(import.meta.dirname, '../..');
const PARTS = 100;
const MODEL = 'unknown-player';
/** A part that is marked further than this from its place is not marked, mm. */
const CLOSE_MM = 0.5;

/** What a scripted user is to mark. */
interface Wanted {
  readonly ref: string;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly value: string;
  readonly package: string;
}

/**
 * What it costs to mark the first 100 parts of the front of a Tern TN-20 on its photo, in the order of their references, in a browser with real clicks, the
 * setting of scale and corners counted in. It needs the built web app. Throws when what is marked is not what was to be marked.
 */
export async function clickFigures(progress: Progress): Promise<Figure[]> {
  const wanted = await partsToMark();
  const { home, remove } = temporaryHome();
  const server = await startServer(home, ['--empty']);
  const browser = await openBrowser();
  try {
    await recordEvents(server.url, [{ kind: 'model-begun', body: { ...UNKNOWN_PLAYER, model_id: MODEL } }]);
    const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } });
    await page.goto(`${server.url}/models/${MODEL}/board`);
    const hand = new MarkingHand();
    await layPhoto(page, hand);
    for (const [i, part] of wanted.entries()) {
      await mark(page, hand, part);
      if (i % 20 === 19) progress(`${i + 1} of ${PARTS} parts marked, ${hand.clicks} clicks so far.`);
    }
    assertMarked(await marksOf(server.url, wanted.length), wanted);
    const reference = `${PARTS} parts of the Tern TN-20 in the order of their references, scale and corners counted in`;
    return [
      { figure: 'models.clicks_per_part', value: round(hand.clicks / PARTS), unit: 'clicks', target: '≤ 4', reference },
      { figure: 'models.keys_per_part', value: round(hand.keys / PARTS), unit: 'keys', target: 'shown', reference },
      {
        figure: 'models.marking_min',
        value: round(hand.minutes(PARTS)),
        unit: 'min',
        target: '≤ 20',
        reference: 'the same clicks and keys by the keystroke-level model (Card, Moran and Newell 1980)',
      },
    ];
  } finally {
    await browser.close();
    await server.stop();
    remove();
  }
}

async function partsToMark(): Promise<Wanted[]> {
  const { models } = await loadModels(join(ROOT, 'models'));
  const parts = models.get('tern-tn20')!.circuit!.parts.filter(({ side }) => side === 'front');
  return parts.toSorted((a, b) => a.ref.localeCompare(b.ref, 'en', { numeric: true })).slice(0, PARTS);
}

async function layPhoto(page: Page, hand: MarkingHand): Promise<void> {
  const photos = page.getByRole('region', { name: 'Photos' });
  await photos.getByLabel('Add: photo of the front, taken straight from above').setInputFiles(join(ROOT, TERN_PHOTO.file));
  hand.clicks += 2;
  const photo = photos.getByRole('group', { name: /^Photo: arrow keys/ });
  await photo.waitFor();
  await hand.write(photos.getByLabel('Distance between the two points (mm)'), '70');
  const { lowerLeft, lowerRight, upperLeft } = TERN_CORNERS;
  for (const [x, y] of [lowerLeft, lowerRight]) await clickPixel(photo, TERN_PHOTO, x, y);
  await hand.click(photos.getByRole('radio', { name: 'Corners' }));
  for (const [x, y] of [lowerLeft, lowerRight, upperLeft]) await clickPixel(photo, TERN_PHOTO, x, y);
  hand.clicks += 5;
  await hand.click(photos.getByRole('button', { name: 'Keep how it lies' }));
  await boardStage(page).locator('image').waitFor();
}

async function mark(page: Page, hand: MarkingHand, part: Wanted): Promise<void> {
  const desk = page.getByRole('region', { name: 'Parts', exact: true });
  const turn = desk.getByRole('button', { name: /^Turn the next/ });
  if (!(await isInHand(page, part))) {
    const again = desk.getByRole('button', { name: wordsOf(part) });
    if ((await again.count()) > 0) await hand.click(again.first());
    else {
      await hand.choose(desk.getByLabel('Kind'), kindFor(part.ref));
      await hand.choose(desk.getByLabel('Package'), part.package);
      await hand.write(desk.getByLabel('Value', { exact: true }), part.value);
      while (!(await turn.innerText()).endsWith(` ${part.rotation}°`)) await hand.click(turn);
    }
  }
  await hand.write(desk.getByLabel('Next reference'), part.ref);
  const stage = boardStage(page);
  await hand.click(stage.locator('svg'), await onPicture(stage, await boardSize(page), part.x, part.y));
}

/** The size of the board as the picture says it. */
async function boardSize(page: Page): Promise<{ width: number; height: number }> {
  const title = await boardStage(page).locator('svg').getAttribute('aria-label');
  const [, width, height] = /board, ([\d.]+) by ([\d.]+) mm/.exec(title!)!;
  return { width: Number(width), height: Number(height) };
}

/** The kind that goes with the letters of a reference. */
function kindFor(ref: string): string {
  const letters = splitRef(ref)!.letters;
  return (PART_KINDS.find((kind) => kind.letters === letters) ?? PART_KINDS.find(({ id }) => id === 'other')!).id;
}

async function isInHand(page: Page, part: Wanted): Promise<boolean> {
  const desk = page.getByRole('region', { name: 'Parts', exact: true });
  const shown = await Promise.all([
    desk.getByLabel('Kind').inputValue(),
    desk.getByLabel('Package').inputValue(),
    desk.getByLabel('Value', { exact: true }).inputValue(),
    desk.getByRole('button', { name: /^Turn the next/ }).innerText(),
  ]);
  return [kindFor(part.ref), part.package, part.value, `Turn the next: ${part.rotation}°`].every((text, i) => text === shown[i]);
}

/** The button of a look that was used before, by its words. */
function wordsOf({ ref, value, package: name, rotation }: Wanted): RegExp {
  const kind = kindOf(kindFor(ref)).name;
  const words = [kind, value, name, rotation === 0 ? '' : `${rotation}°`].filter(Boolean).join(', ');
  return new RegExp(`^\\d ${words.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')}$`);
}

/** What is stored once all of it is. */
async function marksOf(url: string, count: number): Promise<BoardMarks> {
  for (let tries = 0; ; tries++) {
    const marks = (await (await fetch(`${url}/api/models/${MODEL}/marks`)).json()) as BoardMarks;
    if (marks.parts.length >= count || tries > 50) return marks;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

function assertMarked({ parts }: BoardMarks, wanted: readonly Wanted[]): void {
  const byRef = new Map(parts.map((part) => [part.ref, part]));
  const wrong = wanted.filter(({ ref, x, y, rotation, value, package: name }) => {
    const part = byRef.get(ref);
    const isSame = part?.value === value && part.package === name && part.rotation_deg === rotation;
    return !isSame || Math.hypot(part.x_mm - x, part.y_mm - y) > CLOSE_MM;
  });
  if (wrong.length > 0) throw new Error(`not marked as they were to be: ${wrong.map(({ ref }) => ref).join(', ')}`);
}
