import { ALLOYS, type Alloy } from './alloys.ts';

export interface HeatSample {
  readonly seconds: number;
  readonly celsius: number;
}

/** The classification profile that a part was qualified with. A ceiling for the part, not a recipe for the joint. */
export interface HeatProfile {
  readonly preheatC: readonly [number, number];
  readonly preheatS: readonly [number, number];
  readonly liquidusC: number;
  readonly aboveLiquidusS: readonly [number, number];
  readonly nearPeakS: readonly [number, number];
  readonly peakC: number;
  readonly rampUp: number;
  readonly rampDown: number;
  readonly toPeakS: number;
  readonly source: string;
}

/** J-STD-020D for lead-free, J-STD-020C for tin-lead, as two makers of parts print them; later editions differ (see `peakC`). */
export const HEAT_PROFILES: Readonly<Record<'leaded' | 'lead-free', HeatProfile>> = {
  'lead-free': {
    preheatC: [150, 200],
    preheatS: [60, 120],
    liquidusC: 217,
    aboveLiquidusS: [60, 150],
    nearPeakS: [20, 30],
    peakC: 260,
    rampUp: 3,
    rampDown: 6,
    toPeakS: 480,
    source: 'IPC/JEDEC J-STD-020D, lead-free, as tabulated by a maker of parts (2013)',
  },
  leaded: {
    preheatC: [100, 150],
    preheatS: [60, 120],
    liquidusC: 183,
    aboveLiquidusS: [60, 150],
    nearPeakS: [10, 30],
    peakC: 240,
    rampUp: 3,
    rampDown: 6,
    toPeakS: 360,
    source: 'IPC/JEDEC J-STD-020C, tin-lead, as printed in a note on handling parts',
  },
};

export type HeatLimitId = 'peak' | 'reflow' | 'ramp-up' | 'ramp-down' | 'preheat' | 'above-liquidus' | 'near-peak' | 'time-to-peak';

export interface HeatLimit {
  readonly id: HeatLimitId;
  readonly value: number;
  readonly unit: '°C' | 's' | 'K/s';
  readonly atLeast: number | null;
  readonly atMost: number | null;
  readonly passed: boolean;
  /** When it was at its worst, s; null for a sum over the log. */
  readonly at: number | null;
}

export type HeatVerdict =
  | {
      readonly ok: true;
      readonly limits: readonly HeatLimit[];
      readonly passed: boolean;
      readonly source: string;
      readonly knownAlloy: boolean;
    }
  | { readonly ok: false; readonly code: 'alloy-not-said' | 'too-short' | 'never-hot' };

/** Slopes are taken over so long, so that one count of a thermometer does not make a ramp. */
const SLOPE_S = 5;

/**
 * A log of a body's temperature against the limits of its alloy: each passed or missed, with the numbers. The alloy must be
 * said. `peakC` is the part's own, by its thickness and volume (245 to 260 lead-free); for an alloy that J-STD-020 does not
 * know, times count above the alloy's own liquidus, and `knownAlloy` is false. Samples must rise in time.
 */
export function judgeHeat(samples: readonly HeatSample[], alloy: Alloy | undefined, peakC?: number): HeatVerdict {
  if (alloy === undefined) return { ok: false, code: 'alloy-not-said' };
  if (samples.length < 10 || samples.at(-1)!.seconds - samples[0]!.seconds < 30) return { ok: false, code: 'too-short' };
  const profile = profileOf(alloy, peakC);
  const peak = samples.reduce((hottest, each) => (each.celsius > hottest.celsius ? each : hottest));
  if (peak.celsius < profile.preheatC[0]) return { ok: false, code: 'never-hot' };
  const limits = limitsOf(samples, profile, peak, ALLOYS[alloy].liquidusC);
  const knownAlloy = ALLOYS[alloy].family === 'leaded' || ALLOYS[alloy].family === 'lead-free';
  return { ok: true, limits, passed: limits.every(({ passed }) => passed), source: profile.source, knownAlloy };
}

function profileOf(alloy: Alloy, peakC: number | undefined): HeatProfile {
  const { family, liquidusC } = ALLOYS[alloy];
  const base = HEAT_PROFILES[family === 'leaded' ? 'leaded' : 'lead-free'];
  const own =
    family === 'leaded' || family === 'lead-free' ? base : { ...base, liquidusC, preheatC: [liquidusC - 67, liquidusC - 17] as const };
  return peakC === undefined ? own : { ...own, peakC };
}

function limitsOf(samples: readonly HeatSample[], profile: HeatProfile, peak: HeatSample, liquidusC: number): HeatLimit[] {
  const limit = (
    id: HeatLimitId,
    value: number,
    unit: HeatLimit['unit'],
    atLeast: number | null,
    atMost: number | null,
    at: number | null = null,
  ) => ({
    id,
    value,
    unit,
    atLeast,
    atMost,
    at,
    passed: (atLeast === null || value >= atLeast) && (atMost === null || value <= atMost),
  });
  const up = samples.filter(({ seconds }) => seconds <= peak.seconds);
  const down = samples.filter(({ seconds }) => seconds >= peak.seconds);
  const [from, to] = profile.preheatC;
  const rise = steepest(
    up.filter(({ celsius }) => celsius >= to),
    1,
  );
  const fall = steepest(down, -1);
  const start = up.findLast(({ celsius }) => celsius <= 25)?.seconds ?? samples[0]!.seconds;
  return [
    limit('peak', peak.celsius, '°C', null, profile.peakC, peak.seconds),
    limit('reflow', peak.celsius, '°C', liquidusC, null, peak.seconds),
    limit('preheat', timeWhere(up, from, to), 's', ...profile.preheatS),
    limit('above-liquidus', timeWhere(samples, profile.liquidusC, Infinity), 's', ...profile.aboveLiquidusS),
    limit('near-peak', timeWhere(samples, peak.celsius - 5, Infinity), 's', null, profile.nearPeakS[1]),
    limit('ramp-up', rise.slope, 'K/s', null, profile.rampUp, rise.at),
    limit('ramp-down', fall.slope, 'K/s', null, profile.rampDown, fall.at),
    limit('time-to-peak', peak.seconds - start, 's', null, profile.toPeakS),
  ];
}

/** Seconds during which the temperature lies between two, straight between samples. */
export function timeWhere(samples: readonly HeatSample[], low: number, high: number): number {
  let sum = 0;
  for (let i = 1; i < samples.length; i++) {
    const [a, b] = [samples[i - 1]!, samples[i]!];
    sum += (b.seconds - a.seconds) * shareBetween(a.celsius, b.celsius, low, high);
  }
  return sum;
}

function shareBetween(a: number, b: number, low: number, high: number): number {
  const [least, most] = a < b ? [a, b] : [b, a];
  if (most === least) return least >= low && least <= high ? 1 : 0;
  return Math.max(0, Math.min(most, high) - Math.max(least, low)) / (most - least);
}

/** The steepest mean slope over some seconds, in the direction given, K/s; 0 where it never goes that way. */
function steepest(samples: readonly HeatSample[], direction: 1 | -1): { readonly slope: number; readonly at: number | null } {
  let best: { slope: number; at: number | null } = { slope: 0, at: null };
  for (let i = 0, j = 0; i < samples.length; i++) {
    while (j < samples.length && samples[j]!.seconds - samples[i]!.seconds < SLOPE_S) j++;
    const end = samples[j];
    if (!end) break;
    const slope = (direction * (end.celsius - samples[i]!.celsius)) / (end.seconds - samples[i]!.seconds);
    if (slope > best.slope) best = { slope, at: samples[i]!.seconds };
  }
  return best;
}
