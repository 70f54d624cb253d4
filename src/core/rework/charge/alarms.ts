import type { Chemistry } from '../chemistries.ts';
import type { Phase } from './phases.ts';
import type { ChargeSample } from './sample.ts';

export type AlarmKind =
  'over-voltage' | 'no-termination' | 'hot' | 'too-hot-to-charge' | 'too-cold-to-charge' | 'found-too-low' | 'empty-too-deep';

export interface Alarm {
  readonly kind: AlarmKind;
  /** Seconds from the start at which it first showed. */
  readonly at: number;
  readonly value: number;
  readonly limit: number;
  readonly unit: 'V' | 'A' | '°C' | 'K';
}

/** Zones of charging by the guide of JEITA and BAJ (2007), °C: below 0 and above 60 not at all, above 45 gently. */
const COLD_C = 0;
const WARM_C = 45;
const HOT_C = 60;
/** A cell that warms by so many kelvin over its start is not well. Common practice, no source. */
const RISE_K = 15;
/** A held voltage with a current that no longer falls, for so long, does not end by itself. */
const STUCK_S = 20 * 60;
const STILL_FALLS = 0.95;

/** Everything dangerous or wrong that a log of charging shows, in the order of time. */
export function alarmsIn(samples: readonly ChargeSample[], phases: readonly Phase[], chemistry: Chemistry, cells: number): Alarm[] {
  const first = (
    kind: AlarmKind,
    unit: Alarm['unit'],
    limit: number,
    of: (sample: ChargeSample) => number | undefined,
    above = true,
  ): Alarm[] => {
    const found = samples.find((sample) => {
      const value = of(sample);
      return value !== undefined && (above ? value > limit : value < limit);
    });
    return found ? [{ kind, at: found.seconds, value: of(found)!, limit, unit }] : [];
  };
  const charged = (sample: ChargeSample): number | undefined => (sample.amps > 0 ? sample.celsius : undefined);
  const startC = samples[0]!.celsius;
  return [
    ...foundTooLow(samples, chemistry, cells),
    ...first('over-voltage', 'V', chemistry.overV * cells, ({ volts }) => volts),
    ...first('too-cold-to-charge', '°C', COLD_C, charged, false),
    ...first('too-hot-to-charge', '°C', HOT_C, charged),
    ...first('hot', '°C', WARM_C, charged),
    ...(startC === undefined ? [] : first('hot', 'K', RISE_K, ({ celsius }) => (celsius === undefined ? undefined : celsius - startC))),
    ...first('empty-too-deep', 'V', (chemistry.emptyV - 0.1) * cells, ({ volts, amps }) => (amps < 0 ? volts : undefined), false),
    ...stuck(samples, phases),
  ].sort((a, b) => a.at - b.at);
}

/** By its voltage before any current flows, or under the first of it, which lifts it. */
function foundTooLow(samples: readonly ChargeSample[], chemistry: Chemistry, cells: number): Alarm[] {
  const start = samples[0]!;
  const limit = chemistry.reviveNotBelowV * cells;
  return start.amps >= 0 && start.volts < limit ? [{ kind: 'found-too-low', at: start.seconds, value: start.volts, limit, unit: 'V' }] : [];
}

function stuck(samples: readonly ChargeSample[], phases: readonly Phase[]): Alarm[] {
  const held = phases.at(-1);
  if (held?.kind !== 'constant-voltage' || held.seconds < STUCK_S) return [];
  const end = samples[held.last]!;
  const mine = samples.slice(held.first, held.last + 1);
  const late = mine.filter(({ seconds }) => seconds >= end.seconds - STUCK_S);
  const [before, after] = [late.slice(0, Math.ceil(late.length / 4)), late.slice(-Math.ceil(late.length / 4))].map(meanAmps);
  if (after! < STILL_FALLS * before!) return [];
  return [{ kind: 'no-termination', at: late[0]!.seconds, value: after!, limit: 0, unit: 'A' }];
}

const meanAmps = (samples: readonly ChargeSample[]): number => samples.reduce((sum, { amps }) => sum + amps, 0) / samples.length;
