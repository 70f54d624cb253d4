import { ReworkError } from '../rework-error.ts';

/** Values of a decade in the series of IEC 60063, and the tolerance for which each is meant, as a share. */
export const SERIES = { E3: 0.4, E6: 0.2, E12: 0.1, E24: 0.05, E48: 0.02, E96: 0.01, E192: 0.005 } as const;
export type Series = keyof typeof SERIES;

/** Where the old series, rounded by hand a century ago, depart from the rule; by place in E24. */
const E24_BY_HAND: Readonly<Record<number, number>> = { 10: 27, 11: 30, 12: 33, 13: 36, 14: 39, 15: 43, 16: 47, 22: 82 };
/** The one value of E192 that departs from it: 919 by the rule. */
const E192_BY_HAND: Readonly<Record<number, number>> = { 185: 920 };

/**
 * The values of one decade, from 1 to below 10: 10^(i/n) rounded to two digits up to E24 and to three above, with the
 * departures of IEC 60063. E3, E6 and E12 are every eighth, fourth and second of E24; E48 and E96 of their own rule.
 */
export function eSeries(series: Series): number[] {
  const count = Number(series.slice(1));
  if (!(series in SERIES)) throw new ReworkError('unknown-series', `"${series}" is none of ${Object.keys(SERIES).join(', ')}`);
  if (count <= 24) return Array.from({ length: count }, (_, i) => ofE24((i * 24) / count) / 10);
  return Array.from(
    { length: count },
    (_, i) => ((count === 192 ? E192_BY_HAND[i] : undefined) ?? Math.round(100 * 10 ** (i / count))) / 100,
  );
}

const ofE24 = (i: number): number => E24_BY_HAND[i] ?? Math.round(10 * 10 ** (i / 24));

/** The value of a series that is nearest to a wanted one, as a ratio; above 0. */
export function nearestInSeries(value: number, series: Series): number {
  if (!(value > 0) || !Number.isFinite(value)) throw new ReworkError('bad-number', `a value must be above 0, got ${value}`);
  const decade = 10 ** Math.floor(Math.log10(value));
  const candidates = [decade / 10, decade, decade * 10].flatMap((scale) => eSeries(series).map((each) => tidy(each * scale)));
  const away = (candidate: number): number => Math.abs(Math.log(candidate / value));
  return candidates.reduce((best, each) => (away(each) < away(best) ? each : best));
}

/** Without the dust of multiplying by powers of ten. */
export const tidy = (value: number): number => Number(value.toPrecision(12));

/** The coarsest series that holds a value; null when none does. */
export function seriesOf(value: number): Series | null {
  const share = tidy(value / 10 ** Math.floor(Math.log10(value) + 1e-12));
  const names = Object.keys(SERIES) as Series[];
  return names.find((name) => eSeries(name).some((each) => Math.abs(each - share) < 1e-9)) ?? null;
}
