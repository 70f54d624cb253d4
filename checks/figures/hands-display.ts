import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { checkDisplay, type Quad } from '../../src/core/vision/index.ts';
import { photographedDisplay, type DisplayFlaws } from '../../src/core/vision/testing/photographed-display.ts';
import { round, type Figure, type Progress } from './figure.ts';

const DISPLAYS = 60;
const DOTS = [120, 90] as const;
/** How far a dot may be found from where it is, in dots. */
const NEAR = 1.5;

/** Dead dots and lines that a photo shows, on drawn displays in poses and light that the limits were not set on. */
export function displayFigures(progress: Progress): Figure[] {
  const tally = { dots: 0, dotsFound: 0, lines: 0, linesFound: 0, wrong: 0, refused: 0 };
  for (let n = 0; n < DISPLAYS; n++) {
    progress(`Looking at displays … ${n} of ${DISPLAYS}`);
    const next = randomStream(`measured display ${n}`);
    const flaws = flawsOf(next);
    const pose = {
      seed: `photo ${n}`,
      dots: DOTS,
      width: 760,
      height: 600,
      corners: cornersOf(next),
      noise: 1 + 2.5 * next(),
      light: 0.2 + 0.5 * next(),
    };
    add(tally, flaws, checkDisplay(photographedDisplay('white', flaws, pose), { shows: 'white', dots: DOTS }));
  }
  const reference = `${tally.dots} dead dots and ${tally.lines} lines on ${DISPLAYS} drawn photos (lean, lens, noise, pixel gaps, half with a stain or uneven light); ${tally.linesFound} lines found, ${tally.refused} photos refused`;
  return [
    { figure: 'hands.display_dots_found', value: round(tally.dotsFound / tally.dots), unit: '', target: '≥ 0.95', reference },
    {
      figure: 'hands.display_false',
      value: round(tally.wrong / DISPLAYS),
      unit: 'a photo',
      target: '≤ 0.1',
      reference: 'dots and lines that are none, the same photos',
    },
  ];
}

function flawsOf(next: RandomStream): DisplayFlaws {
  const within = (count: number): number => 4 + Math.floor(next() * (count - 8));
  return {
    dots: Array.from({ length: Math.floor(4 * next()) }, () => [within(DOTS[0]), within(DOTS[1])] as const),
    columns: next() < 0.2 ? [within(DOTS[0])] : [],
    rows: next() < 0.2 ? [within(DOTS[1])] : [],
    stains: next() < 0.25 ? [{ x: 0.2 + 0.6 * next(), y: 0.2 + 0.6 * next(), radius: 0.06 + 0.1 * next(), takes: 0.1 + 0.2 * next() }] : [],
    fall: next() < 0.25 ? 0.3 * next() : 0,
  };
}

/** Corners of a display that fills most of the photo, each moved by up to some tens of pixels. */
function cornersOf(next: RandomStream): Quad {
  const near = (x: number, y: number): readonly [number, number] => [x + 36 * (next() - 0.5), y + 36 * (next() - 0.5)];
  return [near(60, 55), near(700, 55), near(700, 540), near(60, 540)];
}

interface Tally {
  dots: number;
  dotsFound: number;
  lines: number;
  linesFound: number;
  wrong: number;
  refused: number;
}

function add(tally: Tally, flaws: DisplayFlaws, answer: ReturnType<typeof checkDisplay>): void {
  const [dots, columns, rows] = [flaws.dots ?? [], flaws.columns ?? [], flaws.rows ?? []];
  // A dot on a line is part of the line.
  const planted = dots.filter(
    ([x, y]) => ![...columns].some((at) => Math.abs(at - x) <= 2) && ![...rows].some((at) => Math.abs(at - y) <= 2),
  );
  tally.dots += planted.length;
  tally.lines += columns.length + rows.length;
  if (!answer.ok) {
    tally.refused++;
    return;
  }
  const at =
    (x: number, y: number) =>
    ([u, v]: readonly [number, number]): boolean =>
      Math.hypot(x * DOTS[0] - u - 0.5, y * DOTS[1] - v - 0.5) < NEAR;
  tally.dotsFound += planted.filter((dot) => answer.dots.some(({ x, y }) => at(x, y)(dot))).length;
  const isLine = (across: boolean, place: number): boolean =>
    (across ? rows : columns).some((line) => Math.abs(place * (across ? DOTS[1] : DOTS[0]) - line - 0.5) < NEAR);
  tally.linesFound += answer.lines.filter(({ across, at: place }) => isLine(across, place)).length;
  tally.wrong += answer.lines.filter(({ across, at: place }) => !isLine(across, place)).length;
  tally.wrong += answer.dots.filter(({ x, y }) => !dots.some(at(x, y))).length;
}
