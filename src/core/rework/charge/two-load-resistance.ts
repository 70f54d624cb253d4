import { median } from '../../numeric/index.ts';
import { assertPositive } from '../rework-error.ts';
import type { ChargeSample, Gap } from './sample.ts';

/**
 * Resistance of a cell by two loads, Ω: R = (U1 − U2) / (I2 − I1) (IEC 61960: 0.2 C for 10 s, then 1 C for 1 s). Another
 * thing than the impedance at 1 kHz, which is smaller: the two are never compared.
 */
export function twoLoadResistance(u1: number, i1: number, u2: number, i2: number): number {
  assertPositive({ u1, u2, 'difference of the currents': Math.abs(i2 - i1) });
  return (u1 - u2) / (i2 - i1);
}

export interface LoggedResistance {
  readonly ohms: number;
  /** Steps of the current that it was taken from. */
  readonly steps: number;
  /** Longest time from before a step to after it, s: the longer, the more the slow part of the cell is in it. */
  readonly withinS: number;
}

/** Only a step of so large a share of the greatest current tells more than noise. */
const STEP_SHARE = 0.3;
const SLOWEST_S = 30;

/** Resistance from each sharp step of the current in a log, as their median; null where there is no such step. */
export function loggedResistance(samples: readonly ChargeSample[], gaps: readonly Gap[]): LoggedResistance | null {
  const missing = new Set(gaps.map(({ row }) => row));
  const most = Math.max(...samples.map(({ amps }) => Math.abs(amps)));
  const found: { ohms: number; within: number }[] = [];
  for (let i = 1; i < samples.length; i++) {
    const [a, b] = [samples[i - 1]!, samples[i]!];
    const within = b.seconds - a.seconds;
    if (missing.has(i) || within > SLOWEST_S || Math.abs(b.amps - a.amps) < STEP_SHARE * most || most === 0) continue;
    const ohms = (b.volts - a.volts) / (b.amps - a.amps);
    if (ohms > 0) found.push({ ohms, within });
  }
  if (found.length === 0) return null;
  return { ohms: median(found.map(({ ohms }) => ohms)), steps: found.length, withinS: Math.max(...found.map(({ within }) => within)) };
}
