import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Problem } from '../../src/bench/views/index.ts';
import { openApp, type OpenedApp } from './open-app.ts';

/** The reference photo of an invented board of 70 × 55 mm, 1600 px wide, and where the board lies in it (read off by eye). */
const PHOTO = readFileSync(join(import.meta.dirname, '../../models/tern-tn20/photos/board-front.jpg'));
const PX_PER_MM = 17.76;
const BOARD = { left_px: 179, top_px: 111, right_px: 1422, bottom_px: 1088 };
/** Middles of parts on that photo, mm from the lower left corner of the board, read off it by eye: two large chips, one small, a coil, a diode, two capacitors. */
const SEEN_MM = [
  [50.9, 29.6],
  [36, 28],
  [19.9, 14.1],
  [38.7, 11.7],
  [15.9, 4.3],
  [19.8, 34],
  [62.3, 12.1],
] as const;

/** Parts with their reference printed beside them, read off the photo by eye: middles in the same mm. */
const PRINTED: Readonly<Record<string, readonly [number, number]>> = {
  C41: [67, 47.3],
  C12: [41, 34.1],
  C43: [47.9, 39],
  R35: [67, 15.5],
  C40: [13.3, 14.1],
  R16: [61.6, 7.5],
  R24: [13.8, 45.4],
  R33: [60.6, 48.7],
};

type Corners = [[number, number], [number, number], [number, number], [number, number]];

const isNear = (x: number, y: number, [[left, top], , [right, bottom]]: Corners): boolean =>
  Math.hypot((left + right) / 2 - x, (top + bottom) / 2 - y) < 1;

interface Outlines {
  readonly outlines: {
    kind: string;
    chance: number;
    reference: string | null;
    outline_px: [number, number][];
    outline_mm: Corners;
    rows_px: [number, number][][];
  }[];
}

describe('what a photo of a board proposes', () => {
  let opened: OpenedApp;
  let hash: string;
  beforeAll(async () => {
    opened = await openApp();
    const form = new FormData();
    form.append('photos', new Blob([PHOTO]), 'board.jpg');
    const { results } = (await (await opened.ask('/api/photos', form)).json()) as { results: { photo: { hash: string } }[] };
    hash = results[0]!.photo.hash;
  });
  afterAll(() => opened.close());

  const asked = (body: object, of = hash): Promise<Response> => opened.ask(`/api/photos/${of}/outlines`, body);

  it('is most parts of it, likeliest first, in px and in mm from its lower left corner', async () => {
    const answer = await asked({ px_per_mm: PX_PER_MM, board: BOARD });
    const { outlines } = (await answer.json()) as Outlines;
    expect(outlines.length).toBeGreaterThan(80);
    expect(outlines.map(({ chance }) => chance)).toEqual(outlines.map(({ chance }) => chance).sort((a, b) => b - a));
    const found = SEEN_MM.filter(([x, y]) => outlines.some(({ outline_mm }) => isNear(x, y, outline_mm)));
    expect(found.length).toBeGreaterThanOrEqual(6);
  });

  it('names parts by the print beside them where it is asked to read, and mostly rightly', async () => {
    const answer = await asked({ px_per_mm: PX_PER_MM, board: BOARD, read_text: true });
    const { outlines } = (await answer.json()) as Outlines;
    const named = outlines.filter(({ reference }) => reference !== null);
    const right = Object.entries(PRINTED).filter(([name, [x, y]]) =>
      named.some(({ reference, outline_mm }) => reference === name && isNear(x, y, outline_mm)),
    );
    expect(right.length).toBeGreaterThanOrEqual(4);
    const wrong = Object.entries(PRINTED).filter(([name, [x, y]]) =>
      named.some(({ reference, outline_mm }) => reference === name && !isNear(x, y, outline_mm)),
    );
    expect(wrong.length).toBeLessThanOrEqual(1);
  });

  it('is none on a photo that is too coarse, of a board that is too large, or that is not here, each with what to do', async () => {
    const refused = async (answer: Response): Promise<[number, string, string]> => {
      const { code, message } = Problem.parse(await answer.json());
      return [answer.status, code, message];
    };
    expect(await refused(await asked({ px_per_mm: 4 }))).toEqual([409, 'photo-too-coarse', expect.stringContaining('600 dpi')]);
    expect(await refused(await asked({ px_per_mm: 6.5, least_chance: 0.9, board: { ...BOARD, right_px: 100 } }))).toMatchObject([
      400,
      'bad-input',
      expect.stringContaining('board'),
    ]);
    expect(await refused(await asked({ px_per_mm: PX_PER_MM }, '0'.repeat(64)))).toMatchObject([
      404,
      'no-such-photo',
      expect.stringContaining('add the photo'),
    ]);
  });
});
