import { describe, expect, test } from 'vitest';
import { fitPart, patternFromPhoto, type Answer, type MarkedPad, type Pad, type Pattern } from '../../src/core/fit/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { library, pairs, patternAt, type PairAnswer } from './footprints.ts';

/** Sources: SOURCE.md beside this file. */

const PX_PER_MM = 40;
const RULER_MM = 20;
const ROUNDS = 5;
const files = library();
const load = (name: string): Pattern => patternAt(files!.get(name)!);

/** What may be answered to a place that was measured: never that a part which fits does not line up, and never that one which does not line up fits. */
const MAY_BE: Readonly<Record<PairAnswer, readonly Answer[]>> = {
  fits: ['fits', 'fits-after-bending', 'cannot-say'],
  'one way': ['cannot-say', 'fits'],
  no: ['does-not-line-up'],
  review: ['cannot-say', 'does-not-line-up'],
};

/** A place as a person would mark it on a photo, each click good to a pixel, and the scale too. */
function measured(place: Pattern, random: () => number): Pattern {
  const click = (): number => 2 * random() - 1;
  const marks = place.pads.filter(({ kind, name }) => kind === 'peg' || name !== '').map((pad) => markOf(pad, click));
  const scale = { fromPx: [0, 0], toPx: [RULER_MM * PX_PER_MM + Math.SQRT2 * click(), 0], apartMm: RULER_MM } as const;
  return patternFromPhoto(place.name, place.kind, marks, scale);
}

function markOf({ name, kind, shape, xMm, yMm, wMm, hMm, turnDeg, drill }: Pad, click: () => number): MarkedPad {
  const [w, h] = kind === 'peg' && drill ? [drill.wMm, drill.hMm] : [wMm, hMm];
  const [wide, high] = turnDeg % 180 === 90 ? [h, w] : [w, h];
  const corner = (at: number): number => at * PX_PER_MM + click();
  const [x1, x2, y1, y2] = [corner(xMm - wide / 2), corner(xMm + wide / 2), corner(-yMm - high / 2), corner(-yMm + high / 2)];
  const round = shape === 'circle' || shape === 'oval';
  return { name: kind === 'peg' ? '' : name, kind, round, xPx: (x1 + x2) / 2, yPx: (y1 + y2) / 2, wPx: x2 - x1, hPx: y2 - y1 };
}

describe.skipIf(!files)('published places measured on a photo', () => {
  test.each(pairs())('$part on $place: $answer', ({ part, place, answer }) => {
    const random = randomStream(`clicks on ${place} for ${part}`);
    const said = Array.from({ length: ROUNDS }, () => fitPart(load(part), measured(load(place), random)).answer);
    expect(said.filter((each) => !MAY_BE[answer].includes(each))).toEqual([]);
  });
});
