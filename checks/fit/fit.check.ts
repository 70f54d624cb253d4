import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { LandPattern } from '../../src/bench/events/index.ts';
import { patternOf, recordOf } from '../../src/bench/fit/index.ts';
import {
  assertFit,
  chipMm,
  chipSizes,
  drawFit,
  fitPart,
  GOALS,
  landSize,
  onGrid,
  placed,
  type FootDrawing,
} from '../../src/core/fit/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { answerPair } from './answer-pair.ts';
import { ABSENT, library, pairs, patternAt } from './footprints.ts';

/** Sources: SOURCE.md beside this file. */

const files = library();
if (!files) console.log(`skipped: ${ABSENT}`);
const load = (name: string) => patternAt(files!.get(name)!);

test('the table of SOURCE.md is read whole', () => {
  expect(pairs().map(({ answer }) => answer)).toEqual([...Array(5).fill('fits'), 'one way', ...Array(5).fill('no'), 'review']);
});

describe.skipIf(!files)('pairs of published land patterns', () => {
  test.each(pairs())('$part on $place: $answer', ({ part, place, answer, leastOverlap, farthestMm }) => {
    const [over, under] = [load(part), load(place)];
    const fit = fitPart(over, under);
    assertFit(over, under, fit);
    expect(answerPair(over, under)).toBe(answer);
    if (leastOverlap !== null) expect(Math.abs(fit.leastOverlap - leastOverlap)).toBeLessThan(0.01);
    if (farthestMm !== null) expect(Math.max(...fit.pads.map(({ offMm }) => Math.hypot(...offMm)))).toBeCloseTo(farthestMm, 3);
    expect(drawFit(over, under, fit, 'a part')).toContain('<svg');
  });

  test('the way to a place with another origin and slots stored turned is the published one', () => {
    const { placing, alignedOn } = fitPart(load(pairs()[4]!.part), load(pairs()[4]!.place));
    expect(alignedOn).toBe('holes');
    expect(placing.turnDeg).toBe(0);
    expect(placing.dxMm).toBeCloseTo(0, 6);
    expect(placing.dyMm).toBeCloseTo(-1.165, 3);
  });
});

describe.skipIf(!files)('a seeded draw of 300 patterns', () => {
  const random = randomStream('patterns that nobody tuned on');
  const paths = [...(files?.values() ?? [])];
  const drawn = Array.from({ length: files ? 300 : 0 }, () => patternAt(paths[Math.floor(random() * paths.length)]!)).filter(
    ({ pads, kind }) => pads.some(({ name, kind: of }) => name !== '' && of !== 'peg') && kind !== 'ribbon-socket',
  );

  test('each fits itself, however it is turned and moved', () => {
    expect(drawn.length).toBeGreaterThan(250);
    const wrong = drawn.filter((pattern) => {
      const place = placed(pattern, { turnDeg: 90 * Math.floor(4 * random()), dxMm: 20 * random(), dyMm: -20 * random() });
      const fit = fitPart(pattern, place);
      assertFit(pattern, place, fit);
      return fit.answer !== 'fits';
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  test('each comes back from the log as it was', () => {
    const lost = drawn.filter((pattern) => !isDeepStrictEqual(patternOf(LandPattern.parse(recordOf(pattern))), pattern));
    expect(lost.map(({ name }) => name)).toEqual([]);
  });

  test('none with four pads or more fits itself stretched by half', () => {
    const many = drawn.filter(({ pads, kind }) => kind !== 'wire-legs' && new Set(pads.map(({ name }) => name)).size >= 4);
    expect(many.length).toBeGreaterThan(100);
    const wrong = many.filter((pattern) => {
      const pads = pattern.pads.map((pad) => ({ ...pad, xMm: 1.5 * pad.xMm, yMm: 1.5 * pad.yMm }));
      return fitPart(pattern, { ...pattern, pads }).answer !== 'does-not-line-up';
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });
});

describe('lands by IPC-7351B', () => {
  const soic8: FootDrawing = { spanMm: [5.8, 6.2], footMm: [0.4, 1.27], widthMm: [0.31, 0.51] };

  test('of SOIC-8 come out as worked, to a tenth of a micrometre, and on the grid as drawn', () => {
    const { outerMm, innerMm, acrossMm } = landSize(soic8, 'gull-wing-wide', 'nominal');
    expect([outerMm, innerMm, acrossMm].map((mm) => Number(mm.toFixed(4)))).toEqual([6.9153, 2.9783, 0.5991]);
    expect([outerMm, innerMm, acrossMm].map(onGrid)).toEqual([6.9, 3, 0.6]);
  });

  test('reach out by 0.2 mm more or less at each end between the levels', () => {
    expect(landSize(soic8, 'gull-wing-wide', 'most').outerMm).toBeCloseTo(7.3153, 4);
    expect(landSize(soic8, 'gull-wing-wide', 'least').outerMm).toBeCloseTo(6.5153, 4);
  });

  test('fillet goals are the published ones', () => {
    const rows = Object.values(GOALS).map(({ toeMm, heelMm, sideMm }) => [toeMm, heelMm, sideMm]);
    expect(rows).toEqual([
      [
        [0.55, 0.35, 0.15],
        [0.45, 0.35, 0.25],
        [0.05, 0.03, 0.01],
      ],
      [
        [0.55, 0.35, 0.15],
        [0.45, 0.35, 0.25],
        [0.01, -0.02, -0.04],
      ],
      [
        [0.1, 0, -0.1],
        [0.55, 0.35, 0.15],
        [0.05, 0.03, 0.01],
      ],
      [
        [0.55, 0.35, 0.15],
        [0, 0, 0],
        [0.05, 0, -0.05],
      ],
      [
        [0.3, 0.2, 0.1],
        [0, 0, 0],
        [0.05, 0, -0.05],
      ],
      [
        [0.6, 0.4, 0.2],
        [0.2, 0.1, 0.02],
        [0.1, 0.05, 0.01],
      ],
      [
        [0.25, 0.15, 0.07],
        [0.8, 0.5, 0.2],
        [0.01, -0.05, -0.1],
      ],
      [
        [0.4, 0.3, 0.2],
        [0, 0, 0],
        [-0.04, -0.04, -0.04],
      ],
      [
        [0.3, 0.2, 0.1],
        [0, 0, 0],
        [0.05, 0, -0.05],
      ],
    ]);
  });
});

describe('codes of chip sizes', () => {
  test('pair as published, and a code that is both is told to be both', () => {
    expect(['0201', '0805', '1206', '2512'].map((code) => chipSizes(code).map(({ metric }) => metric))).toEqual([
      ['0603'],
      ['2012'],
      ['3216'],
      ['6332'],
    ]);
    expect(chipSizes('0402').map(({ imperial }) => imperial)).toEqual(['01005', '0402']);
    expect(chipSizes('0603').map(({ imperial }) => imperial)).toEqual(['0201', '0603']);
    expect(chipSizes('9999')).toEqual([]);
    expect(chipMm(chipSizes('1206')[0]!)).toEqual([3.2, 1.6]);
  });
});
