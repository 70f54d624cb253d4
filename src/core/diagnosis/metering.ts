import { SLIP } from './behaviour.ts';
import type { DeviceModel, TestPoint } from './model.ts';
import { DiagnosisError } from './posterior-over-sets.ts';
import { readingLaw, type Band, type Condition, type ReadingLaw } from './reading-law.ts';
import type { StateSpace } from './state-space.ts';

/** What an unknown trouble does to any one reading: mostly nothing. */
const UNKNOWN_SHIFTED = 0.3;

/** A point of the model; throws DiagnosisError when there is none of that name. */
export function pointOf(model: DeviceModel, id: string): TestPoint {
  const point = model.points.find((candidate) => candidate.id === id);
  if (!point) throw new DiagnosisError('unknown-name', `the model has no test point "${id}"`);
  return point;
}

/** Likelihood of a reading, one entry a state, to within a factor that is the same for all; null is OL. Slips are included. */
export function readingLikelihood(model: DeviceModel, space: StateSpace, point: TestPoint, value: number | null): Float64Array {
  const law = readingLaw(point);
  return byState(model, space, point, (condition) => law.density(condition, value));
}

/** Chance that a reading falls into the band of this value, one entry a state. */
export function sameBandChances(model: DeviceModel, space: StateSpace, point: TestPoint, value: number | null): Float64Array {
  const law = readingLaw(point);
  return bandChances(model, space, point, law, law.bandOf(value));
}

/** The band of a reading. */
export const readingBand = (point: TestPoint, value: number | null): Band => readingLaw(point).bandOf(value);

/** Bands of a reading that is still to be taken, and their chances by state, which sum to 1 over the bands. */
export function readingOutcomes(model: DeviceModel, space: StateSpace, point: TestPoint): [Band, Float64Array][] {
  const law = readingLaw(point);
  return law.bands.map((band) => [band, bandChances(model, space, point, law, band)]);
}

const bandChances = (model: DeviceModel, space: StateSpace, point: TestPoint, law: ReadingLaw, band: Band): Float64Array =>
  byState(model, space, point, (condition) => law.bandChance(condition, band));

/** Where both faults of a pair shift the point, either may win. */
function byState(model: DeviceModel, space: StateSpace, point: TestPoint, of: (condition: Condition) => number): Float64Array {
  const values = new Map<Condition, number>();
  const slip = of('slip');
  const valueOf = (condition: Condition): number => {
    const known = values.get(condition);
    if (known !== undefined) return known;
    const value = (1 - SLIP) * of(condition) + SLIP * slip;
    values.set(condition, value);
    return value;
  };
  const shifted = Float64Array.from(model.faults, (fault) => {
    const shift = fault.shifts[point.id];
    return shift === undefined ? Number.NaN : valueOf(shift);
  });
  const normal = valueOf('normal');
  const result = new Float64Array(space.size).fill(normal);
  for (let s = 1; s < space.unknown; s++) {
    const a = shifted[space.first[s]!]!;
    const b = space.second[s]! < 0 ? Number.NaN : shifted[space.second[s]!]!;
    if (!Number.isNaN(a) && !Number.isNaN(b)) result[s] = (a + b) / 2;
    else if (!Number.isNaN(a)) result[s] = a;
    else if (!Number.isNaN(b)) result[s] = b;
  }
  result[space.unknown] = (1 - UNKNOWN_SHIFTED) * normal + UNKNOWN_SHIFTED * valueOf('any');
  return result;
}
