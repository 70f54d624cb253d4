import { studentDensity } from '../numeric/index.ts';
import type { DeviceModel, Shift, TestPoint } from './model.ts';
import type { StateSpace } from './state-space.ts';

/** What a reading looks like beside its reference. */
export type Band = 'normal' | 'low' | 'high' | 'near zero' | 'OL';
export const BANDS: readonly Band[] = ['normal', 'low', 'high', 'near zero', 'OL'];

type Condition = 'normal' | Shift;

/**
 * Scales on which a meter's scatter is about the same everywhere: asinh(V / 50 mV), ln(Ω + 0.1), plain diode volts, ln(A + 10 µA). `floor` is
 * the least scatter on that scale (meter and temperature; common practice, no source), `top` the largest reading that is thought of.
 */
interface Scale {
  readonly of: (value: number) => number;
  readonly slope: (value: number) => number;
  readonly floor: number;
  readonly top: number;
}

const SCALES: Readonly<Record<TestPoint['mode'], Scale>> = {
  volts: { of: (v) => Math.asinh(v / 0.05), slope: (v) => 1 / Math.hypot(v, 0.05), floor: 0.015, top: 30 },
  ohms: { of: (r) => Math.log(Math.max(r, 0) + 0.1), slope: (r) => 1 / (Math.max(r, 0) + 0.1), floor: 0.03, top: 1e7 },
  diode: { of: (v) => v, slope: () => 1, floor: 0.012, top: 3 },
  amps: { of: (i) => Math.log(Math.max(i, 0) + 1e-5), slope: (i) => 1 / (Math.max(i, 0) + 1e-5), floor: 0.05, top: 5 },
};

/** Share of readings that are of something else (wrong point, slipped probe): spread evenly over all that a meter may show. */
const SLIP = 0.03;
/** Chance of OL in each condition, where good boards do not read OL; common practice, no source. */
const OL_CHANCE: Readonly<Record<Condition, number>> = { normal: 0.003, low: 0.01, high: 0.03, zero: 0.005, open: 0.93, any: 0.15 };
/** The same where good boards do read OL. */
const OL_AS_GOOD = 0.95;
/** What an unknown trouble does to any one reading: mostly nothing. */
const UNKNOWN_SHIFTED = 0.3;

/**
 * Likelihood of a reading in each state, as a density on the scale of its mode (OL: as a chance). Unaffected points follow the predictive Student-t of
 * the known-good boards; affected ones are spread evenly over the side that the fault moves them to. A point without a reference says nothing: all ones.
 */
export function readingLikelihood(model: DeviceModel, space: StateSpace, pointId: string, value: number | null): Float64Array {
  const point = model.points.find(({ id }) => id === pointId);
  if (!point?.reference) return new Float64Array(space.size).fill(1);
  const density = densities(point, point.reference, value);
  return byState(model, space, point, (condition) => density(condition));
}

/** Chance of each band in each state: what a reading would show, before it is taken. */
export function bandChances(model: DeviceModel, space: StateSpace, point: TestPoint, band: Band): Float64Array {
  const goodReadsOl = point.reference?.mean === null;
  const passive = point.mode === 'ohms' || point.mode === 'diode';
  return byState(model, space, point, (condition) => bandTable(condition, goodReadsOl, passive)[band]);
}

function byState(model: DeviceModel, space: StateSpace, point: TestPoint, of: (condition: Condition) => number): Float64Array {
  const shiftOf = model.faults.map((fault) => fault.shifts[point.id]);
  const values = new Map<Condition, number>();
  const cached = (condition: Condition): number => {
    let value = values.get(condition);
    if (value === undefined) values.set(condition, (value = of(condition)));
    return value;
  };
  return Float64Array.from(space.members, (faults, state) => {
    if (state === space.unknown) return (1 - UNKNOWN_SHIFTED) * cached('normal') + UNKNOWN_SHIFTED * cached('any');
    const shifts = faults.flatMap((fault) => shiftOf[fault] ?? []);
    return shifts.length === 0 ? cached('normal') : shifts.reduce((sum, shift) => sum + cached(shift), 0) / shifts.length;
  });
}

function densities(
  point: TestPoint,
  reference: NonNullable<TestPoint['reference']>,
  value: number | null,
): (condition: Condition) => number {
  const scale = SCALES[point.mode];
  const passive = point.mode === 'ohms' || point.mode === 'diode';
  const [bottom, top] = [scale.of(0), scale.of(scale.top)];
  const even = 1 / (top - bottom);
  const olIn = (condition: Condition): number => {
    if (reference.mean === null && condition !== 'zero' && condition !== 'low') return OL_AS_GOOD;
    return condition === 'open' && !passive ? OL_CHANCE.zero : OL_CHANCE[condition];
  };
  if (value === null) return (condition) => (1 - SLIP) * olIn(condition) + SLIP / 2;
  const x = scale.of(value);
  const shape = (condition: Condition): number =>
    reference.mean === null ? shapeWithoutMean(condition, x, bottom, even) : shapeAt(condition);
  const shapeAt = (condition: Condition): number => {
    const mean = reference.mean!;
    const centre = scale.of(mean);
    const spread = Math.max(scale.slope(mean) * reference.spread, scale.floor) * Math.sqrt(1 + 1 / reference.boards);
    if (condition === 'normal') return studentDensity((x - centre) / spread, Math.max(reference.boards - 1, 1)) / spread;
    if (condition === 'low') return between(x, bottom, centre - 2 * spread);
    if (condition === 'high') return between(x, centre + 2 * spread, top);
    if (condition === 'any' || (condition === 'open' && passive)) return even;
    return nearZero(x, bottom);
  };
  return (condition) => (1 - SLIP) * (1 - olIn(condition)) * shape(condition) + SLIP * even;
}

function shapeWithoutMean(condition: Condition, x: number, bottom: number, even: number): number {
  return condition === 'zero' || condition === 'low' ? nearZero(x, bottom) : even;
}

/** Evenly between two ends; a range that is hardly there still has some width. */
function between(x: number, from: number, to: number): number {
  const width = Math.max(to - from, 0.05);
  return x >= from - 0.02 && x <= from + width ? 1 / width : 0;
}

/** Falls off exponentially from what a dead short or a dead rail reads. */
const nearZero = (x: number, bottom: number): number => 2 * Math.exp(-2 * Math.abs(x - bottom));

function bandTable(condition: Condition, goodReadsOl: boolean, passive: boolean): Readonly<Record<Band, number>> {
  const normal = goodReadsOl ? row(0.01, 0.01, 0.01, 0.01, 0.96) : row(0.955, 0.015, 0.015, 0.01, 0.005);
  if (condition === 'normal') return normal;
  if (condition === 'low') return row(0.08, 0.8, 0.02, 0.09, 0.01);
  if (condition === 'high') return row(0.08, 0.02, 0.84, 0.02, 0.04);
  if (condition === 'any') return row(0.2, 0.25, 0.25, 0.15, 0.15);
  if (condition === 'open' && passive) return row(0.02, 0.01, 0.05, 0.01, 0.91);
  return row(0.03, 0.12, 0.01, 0.83, 0.01);
}

const row = (normal: number, low: number, high: number, zero: number, ol: number): Readonly<Record<Band, number>> => ({
  normal,
  low,
  high,
  'near zero': zero,
  OL: ol,
});
