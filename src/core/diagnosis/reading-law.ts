import { METER_SCALES, type MeterScale } from './meter-scale.ts';
import type { Shift, TestPoint } from './model.ts';
import { evenSpread, mixedSpread, studentSpread, type Spread } from './spread.ts';

/** What a point shows: unaffected, under each shift, of a unit with an unknown trouble, or on a slip of the probe. */
export type Condition = 'normal' | Shift | 'slip';

/** What a reading of a point looks like in each condition. */
export interface ReadingLaw {
  /** Bands into which readings fall. */
  readonly bands: readonly Band[];
  bandOf(value: number | null): Band;
  /** Density of a number on the meter's scale; of OL (null) its chance. Comparable between conditions of one reading. */
  density(condition: Condition, value: number | null): number;
  bandChance(condition: Condition, band: Band): number;
}

/** Beside a reference: normal, low, high, near zero, OL. Without one: near zero, a number, OL. */
export type Band = 'normal' | 'low' | 'high' | 'near-zero' | 'number' | 'OL';

/** A band of numbers on the meter's scale; the last one that holds a number counts. */
interface Range {
  readonly band: Band;
  readonly from: number;
  readonly to: number;
}

interface Shape {
  readonly ol: number;
  readonly spread: Spread;
}

type Shapes = Readonly<Record<Condition, Shape>>;

/** A reading so many scales from the middle of the good boards is called low or high. */
const NORMAL_REACH = 3;
/** What of a dead short or a dead rail still counts as near zero, in its own scatters. */
const ZERO_REACH = 3;
/** Share of affected points that read as if they were not. */
const FAINT = 0.06;

/** The law of one point. `sign` turns a rail of negative volts over, so that "low" is always towards zero. */
export function readingLaw(point: TestPoint): ReadingLaw {
  const scale = METER_SCALES[point.mode];
  const mean = point.reference?.mean ?? null;
  const sign = mean !== null && mean < 0 ? -1 : 1;
  if (!point.reference) return lawOf(scale, sign, withoutReference(scale), [numbers('number'), zeroRange(scale)]);
  if (mean === null) return lawOf(scale, sign, goodReadsOl(scale), [numbers('low'), zeroRange(scale)], 'normal');
  const { spread, boards } = point.reference;
  // Predictive of one more board after n, mean and spread unknown: t with n − 1 degrees, scale s·√(1 + 1/n).
  const width = Math.max(scale.slope(mean) * spread, scale.floor) * Math.sqrt(1 + 1 / boards);
  const centre = scale.of(Math.abs(mean));
  const [from, to] = [centre - NORMAL_REACH * width, centre + NORMAL_REACH * width];
  const ranges: Range[] = [
    { band: 'low', from: -Infinity, to: from },
    zeroRange(scale),
    { band: 'normal', from, to },
    { band: 'high', from: to, to: Infinity },
  ];
  return lawOf(scale, sign, besideReference(scale, studentSpread(centre, width, Math.max(boards - 1, 1)), centre, width), ranges);
}

const numbers = (band: Band): Range => ({ band, from: -Infinity, to: Infinity });

const zeroRange = (scale: MeterScale): Range => ({
  band: 'near-zero',
  from: scale.of(0) - ZERO_REACH * scale.nearZero,
  to: scale.of(0) + ZERO_REACH * scale.nearZero,
});

const nearZero = (scale: MeterScale): Spread => studentSpread(scale.of(0), scale.nearZero, 3);
const anyNumber = (scale: MeterScale): Spread =>
  mixedSpread([
    [0.9, evenSpread(scale.of(0), scale.of(scale.top))],
    [0.1, studentSpread(scale.of(0), scale.of(scale.top) - scale.of(0), 1)],
  ]);

function besideReference(scale: MeterScale, normal: Spread, centre: number, width: number): Shapes {
  const [bottom, top] = [scale.of(0), Math.max(scale.of(scale.top), centre + 5 * width)];
  const any = anyNumber(scale);
  const zero = nearZero(scale);
  const low = evenSpread(Math.min(bottom, centre - 5 * width), centre);
  const faintly = (spread: Spread): Spread =>
    mixedSpread([
      [FAINT, normal],
      [1 - FAINT, spread],
    ]);
  const { hasOl } = scale;
  return {
    normal: { ol: hasOl ? 0.003 : 0.0003, spread: normal },
    low: { ol: 0.001, spread: faintly(low) },
    high: { ol: hasOl ? 0.2 : 0.002, spread: faintly(evenSpread(centre, top)) },
    zero: {
      ol: 0.001,
      spread: faintly(
        mixedSpread([
          [0.93, zero],
          [0.07, low],
        ]),
      ),
    },
    open: hasOl ? { ol: 0.92, spread: faintly(evenSpread(centre, top)) } : { ol: 0.001, spread: faintly(zero) },
    any: {
      ol: hasOl ? 0.15 : 0.005,
      spread: mixedSpread([
        [0.25, normal],
        [0.25, zero],
        [0.5, any],
      ]),
    },
    slip: { ol: hasOl ? 0.3 : 0.02, spread: any },
  };
}

function goodReadsOl(scale: MeterScale): Shapes {
  const any = anyNumber(scale);
  return {
    normal: { ol: 0.985, spread: any },
    low: { ol: 0.08, spread: any },
    high: { ol: 0.9, spread: any },
    zero: { ol: 0.03, spread: nearZero(scale) },
    open: { ol: 0.985, spread: any },
    any: { ol: 0.4, spread: any },
    slip: { ol: 0.3, spread: any },
  };
}

/**
 * Nothing is known of good boards: they may well read near zero, or OL where the meter can. So only a reading that physics
 * forbids a fault, or a fault that forces it, tells anything: low, high and any are like unaffected.
 */
function withoutReference(scale: MeterScale): Shapes {
  const any = anyNumber(scale);
  const zero = nearZero(scale);
  const neutral: Shape = {
    ol: scale.hasOl ? 0.2 : 0.01,
    spread: mixedSpread([
      [0.25, zero],
      [0.75, any],
    ]),
  };
  const dead: Shape = {
    ol: 0.01,
    spread: mixedSpread([
      [0.95, zero],
      [0.05, any],
    ]),
  };
  const open: Shape = scale.hasOl ? { ol: 0.92, spread: any } : dead;
  return { normal: neutral, low: neutral, high: neutral, any: neutral, slip: neutral, zero: dead, open };
}

function lawOf(scale: MeterScale, sign: number, shapes: Shapes, ranges: readonly Range[], ol: Band = 'OL'): ReadingLaw {
  const cuts = cut(ranges);
  return {
    bands: [...new Set([...ranges.map(({ band }) => band), ol])],
    bandOf(value) {
      if (value === null) return ol;
      const x = scale.of(sign * value);
      return ranges.findLast(({ from, to }) => x >= from && x <= to)!.band;
    },
    density(condition, value) {
      const shape = shapes[condition];
      return value === null ? shape.ol : (1 - shape.ol) * shape.spread.density(scale.of(sign * value));
    },
    bandChance(condition, band) {
      const { ol: dark, spread } = shapes[condition];
      const lit = cuts.reduce((sum, each) => (each.band === band ? sum + below(spread, each.to) - below(spread, each.from) : sum), 0);
      return (band === ol ? dark : 0) + (1 - dark) * lit;
    },
  };
}

/** The ranges without overlap: cut at every edge, each piece belongs to the last range that holds it. */
function cut(ranges: readonly Range[]): Range[] {
  const edges = [...new Set(ranges.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  return edges.slice(1).map((to, i) => {
    const from = edges[i]!;
    return { band: ranges.findLast((range) => range.from <= from && range.to >= to)!.band, from, to };
  });
}

const below = (spread: Spread, x: number): number => (x === Infinity ? 1 : x === -Infinity ? 0 : spread.below(x));
