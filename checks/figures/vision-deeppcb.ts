import {
  compare,
  atStrictness,
  greyOf,
  placeInOther,
  smoothFlow,
  type Alignment,
  type PictureLibrary,
  type Plane,
  type Proposal,
} from '../../src/core/vision/index.ts';
import { round, type Figure, type Progress } from './figure.ts';
import { deepPcbCase, deepPcbNames, turnedCase, type PairCase } from './vision-cases.ts';
import type { Box } from './vision-defects.ts';
import { DEEPPCB_MARGIN_PX, Tally, withMargin } from './vision-score.ts';

const PUBLISHED =
  'published by its authors, on their own test part, told apart by type and trained: F .982; a plain classical pipeline here: ';

/** Boxes of what is likelier real than not, with the margin that the labels of the set have. */
export function proposedBoxes(pair: PairCase, proposals: readonly Proposal[]): Box[] {
  const { width, height } = pair.reference;
  return atStrictness(proposals, 0.5).map(({ box: { left, top, right, bottom } }) =>
    withMargin([left, top, right, bottom], DEEPPCB_MARGIN_PX, width, height),
  );
}

const boxesOf = ({ truth }: PairCase): Box[] => truth.map(({ box }) => box);

/** The measuring half as it is: aligned by its authors to some px. */
export async function deepPcbFigures(library: PictureLibrary, progress: Progress): Promise<Figure[]> {
  const names = deepPcbNames('measuring');
  progress(`Comparing ${names.length} pairs of bare boards …`);
  const tally = new Tally();
  let refused = 0;
  for (const name of names) {
    const pair = await deepPcbCase(name);
    const result = compare([pair.reference], pair.other, library);
    if (!result.ok) refused++;
    tally.add(boxesOf(pair), result.ok ? proposedBoxes(pair, result.proposals) : []);
  }
  return [
    {
      figure: 'vision.deeppcb_f1',
      value: round(tally.f1),
      unit: '',
      target: '≥ 0.97',
      reference: `${names.length} pairs (odd places of the sorted names; the ranker learned from the even ones), ${tally.hit} found, ${tally.missed} missed, ${tally.false} false, ${refused} pairs refused; any type, overlap over union ≥ .33; ${PUBLISHED}.951`,
    },
  ];
}

/** Mean distance, across edges, above which a pair that was taken for aligned is a silent failure. */
const LOST_PX = 3;

/** The measuring half with the tested board photographed anew. */
export async function turnedFigures(library: PictureLibrary, progress: Progress): Promise<Figure[]> {
  const names = deepPcbNames('measuring');
  progress(`Comparing the same pairs, turned, tilted and lit anew …`);
  const tally = new Tally();
  const count = { failed: 0, silent: 0 };
  const codes = new Map<string, number>();
  for (const name of names) {
    const pair = await turnedCase(name);
    const result = compare([pair.reference], pair.other, library);
    if (!result.ok) codes.set(result.code, (codes.get(result.code) ?? 0) + 1);
    const lost = result.ok && alignmentError(result.alignment, pair) > LOST_PX;
    if (lost) count.silent++;
    if (lost || !result.ok) count.failed++;
    tally.add(boxesOf(pair), result.ok ? proposedBoxes(pair, result.proposals) : []);
  }
  const refused = [...codes].map(([code, n]) => `${code} ${n}`).join(', ');
  const about = `${names.length} pairs of the measuring half, turned up to 30°, tilted up to 15°, light up to ±40 %, blur and noise, whole board on a table`;
  return [
    {
      figure: 'vision.deeppcb_turned_f1',
      value: round(tally.f1),
      unit: '',
      target: '≥ 0.9',
      reference: `${about}; ${tally.hit} found, ${tally.missed} missed (all of a refused pair), ${tally.false} false; a plain classical pipeline: .63`,
    },
    {
      figure: 'vision.deeppcb_turned_failed',
      value: round(count.failed / names.length),
      unit: '',
      target: '≤ 0.02',
      reference: `same pairs; refused: ${refused || 'none'}; a plain classical pipeline: .15`,
    },
    {
      figure: 'vision.deeppcb_turned_silent',
      value: round(count.silent / names.length),
      unit: '',
      target: '≤ 0',
      reference: `same pairs; taken for aligned, but off by more than ${LOST_PX} px on average across its edges`,
    },
  ];
}

/**
 * Mean distance in px, across the edges, between where edges of the reference were taken to and where they truly are; the pair's own small displacement counted in.
 * Along a straight edge nothing can be told, by nobody.
 */
export function alignmentError(alignment: Alignment, { reference, flat, shot }: PairCase): number {
  const grey = greyOf(reference);
  const own = smoothFlow(grey, greyOf(flat!));
  const node = (plane: Plane, x: number, y: number): number =>
    plane.data[Math.round(y / own.step) * plane.width + Math.round(x / own.step)]!;
  const distances = strongEdges(grey).map(([x, y, nx, ny]) => {
    const truth = (u: number, v: number): [number, number] => shot!.truth(u + node(own.dx, x, y), v + node(own.dy, x, y));
    const [tu, tv] = truth(x, y);
    const [au, av] = truth(x - ny, y + nx);
    const [u, v] = placeInOther(alignment, x, y);
    const along = Math.hypot(au - tu, av - tv);
    return Math.abs((u - tu) * (av - tv) - (v - tv) * (au - tu)) / along;
  });
  return distances.reduce((sum, d) => sum + d, 0) / Math.max(1, distances.length);
}

/** The strongest edge of each of 9 × 9 fields that has one, and the direction across it. */
function strongEdges({ width, height, data }: Plane): [number, number, number, number][] {
  const found: [number, number, number, number][] = [];
  const [w, h] = [Math.floor(width / FIELDS), Math.floor(height / FIELDS)];
  for (let field = 0; field < FIELDS * FIELDS; field++) {
    let best = 60;
    let edge: [number, number, number, number] | undefined;
    for (let y = Math.floor(field / FIELDS) * h + 8; y < Math.floor(field / FIELDS + 1) * h - 8; y += 2)
      for (let x = (field % FIELDS) * w + 8; x < ((field % FIELDS) + 1) * w - 8; x++) {
        const i = y * width + x;
        const gx = data[i + 3]! - data[i - 3]! + data[i + 3 + 2 * width]! - data[i - 3 + 2 * width]!;
        const gy = data[i + 3 * width]! - data[i - 3 * width]! + data[i + 2 + 3 * width]! - data[i + 2 - 3 * width]!;
        const strength = Math.hypot(gx, gy);
        if (strength <= best) continue;
        best = strength;
        edge = [x, y, gx / strength, gy / strength];
      }
    if (edge) found.push(edge);
  }
  return found;
}

const FIELDS = 9;
/** Least mean of the smaller eigenvalue of the gradients' covariance at a corner. */
const LEAST_CORNER = 500;

/** The strongest corner of each of 9 × 9 fields that has one: places at which a displacement can be told both ways. */
export function strongCorners(plane: Plane): [number, number][] {
  const found: [number, number][] = [];
  const [w, h] = [Math.floor(plane.width / FIELDS), Math.floor(plane.height / FIELDS)];
  for (let row = 0; row < FIELDS; row++)
    for (let column = 0; column < FIELDS; column++) {
      let best = LEAST_CORNER;
      let place: [number, number] | undefined;
      for (let y = row * h + 8; y < (row + 1) * h - 8; y += 2)
        for (let x = column * w + 8; x < (column + 1) * w - 8; x += 2) {
          const value = cornerAt(plane, x, y);
          if (value <= best) continue;
          best = value;
          place = [x, y];
        }
      if (place) found.push(place);
    }
  return found;
}

function cornerAt({ width, data }: Plane, x0: number, y0: number): number {
  let [xx, yy, xy] = [0, 0, 0];
  for (let y = y0 - 5; y <= y0 + 5; y++)
    for (let x = x0 - 5; x <= x0 + 5; x++) {
      const i = y * width + x;
      const gx = data[i + 1]! - data[i - 1]!;
      const gy = data[i + width]! - data[i - width]!;
      xx += gx * gx;
      yy += gy * gy;
      xy += gx * gy;
    }
  return ((xx + yy) / 2 - Math.hypot((xx - yy) / 2, xy)) / 121;
}
