import { median } from '../../numeric/index.ts';
import type { Chemistry } from '../chemistries.ts';
import type { ChargeSample } from './sample.ts';

export type PhaseKind = 'rest' | 'gentle' | 'constant-current' | 'constant-voltage' | 'discharge';

export interface Phase {
  readonly kind: PhaseKind;
  /** Indices of its first and last sample. */
  readonly first: number;
  readonly last: number;
  readonly seconds: number;
  readonly meanA: number;
  readonly startV: number;
  readonly endV: number;
}

/** A current below this share of the greatest is none. */
const REST = 0.015;
/** What is far below the plateau of the current, and how near to its greatest a voltage is held. */
const FALLEN = 0.93;
const GENTLE = 0.5;
const HELD_V = 0.02;
/** A phase of fewer samples is a flicker, and goes to its neighbour. */
const LEAST_SAMPLES = 3;

/** The log cut into phases: gentle start, constant current, constant voltage, rest, discharge; one after the other, without holes. */
export function phasesOf(samples: readonly ChargeSample[], chemistry: Chemistry, cells = 1): Phase[] {
  const charging = samples.map(({ amps }) => amps).filter((amps) => amps > 0);
  const most = Math.max(...samples.map(({ amps }) => Math.abs(amps)));
  const plateau = plateauOf(charging.filter((amps) => amps > REST * most));
  const held = heldVolts(samples, plateau);
  const kinds = samples.map((sample): PhaseKind => {
    if (Math.abs(sample.amps) < REST * most) return 'rest';
    if (sample.amps < 0) return 'discharge';
    if (sample.amps < FALLEN * plateau && held !== null && sample.volts >= held - HELD_V * cells) return 'constant-voltage';
    if (sample.amps < GENTLE * plateau && sample.volts < (chemistry.gentleBelowV + 0.2) * cells) return 'gentle';
    return 'constant-current';
  });
  return runs(withoutFlicker(kinds), samples);
}

/** The current that the charger holds: the median of the upper half of the charging currents; 0 where there are none. */
function plateauOf(charging: readonly number[]): number {
  if (charging.length === 0) return 0;
  const most = charging.toSorted((a, b) => a - b)[Math.floor(0.98 * (charging.length - 1))]!;
  return median(charging.filter((amps) => amps > 0.8 * most));
}

/** The voltage that is held while the current falls: the median of the upper fifth of the voltages under a fallen current; null where it never falls. */
function heldVolts(samples: readonly ChargeSample[], plateau: number): number | null {
  const fallen = samples.filter(({ amps }) => amps > REST * plateau && amps < FALLEN * plateau).map(({ volts }) => volts);
  if (fallen.length < LEAST_SAMPLES) return null;
  const sorted = fallen.toSorted((a, b) => b - a);
  const held = median(sorted.slice(0, Math.max(LEAST_SAMPLES, Math.ceil(sorted.length / 5))));
  const most = Math.max(...samples.filter(({ amps }) => amps > 0).map(({ volts }) => volts));
  return held > most - 3 * HELD_V ? held : null;
}

function withoutFlicker(kinds: readonly PhaseKind[]): PhaseKind[] {
  const calm = [...kinds];
  for (let first = 0; first < calm.length;) {
    let end = first + 1;
    while (end < calm.length && calm[end] === calm[first]) end++;
    const neighbour = calm[first - 1] ?? calm[end];
    if (end - first < LEAST_SAMPLES && neighbour !== undefined) calm.fill(neighbour, first, end);
    first = end;
  }
  return calm;
}

function runs(kinds: readonly PhaseKind[], samples: readonly ChargeSample[]): Phase[] {
  const phases: Phase[] = [];
  for (let first = 0; first < kinds.length;) {
    let last = first;
    while (last + 1 < kinds.length && kinds[last + 1] === kinds[first]) last++;
    const mine = samples.slice(first, last + 1);
    phases.push({
      kind: kinds[first]!,
      first,
      last,
      seconds: samples[Math.min(last + 1, samples.length - 1)]!.seconds - samples[first]!.seconds,
      meanA: mine.reduce((sum, { amps }) => sum + amps, 0) / mine.length,
      startV: mine[0]!.volts,
      endV: mine.at(-1)!.volts,
    });
    first = last + 1;
  }
  return phases;
}
