import type { DisplayAnswer, DisplayFound, Dot, Line, Shown } from '../../core/vision/index.ts';
import type { TestSaid } from '../logs/index.ts';
import { verdictByScale } from './verdict-by-scale.ts';

export interface DisplayPhoto {
  readonly shows: Shown;
  readonly found: DisplayFound;
}

/** A line counts as so many dots on the scale salvor-1. */
const DOTS_OF_LINE = 20;
/** Two places so near each other on photos of the same display are one, shares of it. */
const SAME = 0.015;

/** What photos of one display in several colours show together: each dot and line once. */
export function displayTest(photos: readonly DisplayPhoto[]): TestSaid {
  const dots = unique(
    photos.flatMap(({ found }) => found.dots),
    (a: Dot, b: Dot) => Math.hypot(a.x - b.x, a.y - b.y) < SAME,
  );
  const lines = unique(
    photos.flatMap(({ found }) => found.lines),
    (a: Line, b: Line) => a.across === b.across && Math.abs(a.at - b.at) < SAME,
  );
  const count = dots.reduce((sum, dot) => sum + dot.count, 0);
  const white = photos.findLast(({ shows }) => shows === 'white')?.found;
  const stains = white?.stains.length ?? 0;
  const darkest = white?.darkestPercent ?? null;
  const picture = count + DOTS_OF_LINE * lines.length;
  const counted = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`;
  const light =
    darkest === null ? '' : ` The darkest place lies ${Math.round(darkest)} % below the middle; lens and angle of the photo are in it.`;
  return {
    verdict: verdictByScale({ picture, ...(darkest === null ? {} : { light: darkest }) }),
    text: `On ${photos.map(({ shows }) => shows).join(', ')}: ${counted(count, 'odd dot')}, ${counted(lines.length, 'line')}, ${counted(stains, 'stain')}.${light}`,
    values: [
      { name: 'Odd dots', value: count, unit: '' },
      { name: 'Lines', value: lines.length, unit: '' },
      { name: 'Dots, a line as 20', value: picture, unit: 'dots', criterion: 'picture' },
      ...(white ? [{ name: 'Stains', value: stains, unit: '' }] : []),
      ...(darkest === null
        ? []
        : [{ name: 'Darkest below the middle', value: Number(darkest.toFixed(1)), unit: '%', criterion: 'light' as const }]),
    ],
  };
}

function unique<T>(all: readonly T[], same: (a: T, b: T) => boolean): T[] {
  const kept: T[] = [];
  for (const each of all) if (!kept.some((other) => same(other, each))) kept.push(each);
  return kept;
}

const REFUSALS: Readonly<Record<Extract<DisplayAnswer, { ok: false }>['code'], string>> = {
  'screen-not-found': 'The display was not found on the photo. Show its four corners below: upper left first, then clockwise.',
  'too-small': 'The display is too small on the photo. Go nearer, so that it fills most of it.',
  'too-dark': 'The display is too dark on the photo. Expose for the display, in a dark room.',
  'too-bright': 'The display is burnt out on the photo. Expose less: touch the display on the screen of the camera and lower the light.',
  'not-flat': 'These four corners make no four-sided shape. Show them anew: upper left first, then clockwise.',
};
/** Why a photo of a display was not judged, and what to do. */
export const displayRefusalWords = (code: keyof typeof REFUSALS): string => REFUSALS[code];
