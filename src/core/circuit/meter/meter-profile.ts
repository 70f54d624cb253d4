import { CircuitError } from '../circuit-error.ts';

/** What a meter can be set to. Readings are V, Ω, V of drop, Ω, A. */
export type MeterMode = 'volts' | 'ohms' | 'diode' | 'continuity' | 'amps';

/** One range: a reading of up to `upTo` is off by no more than `percent` of itself plus so many `digits` of its last place. */
export interface MeterRange {
  readonly upTo: number;
  readonly resolution: number;
  readonly percent: number;
  readonly digits: number;
}

/** A range in which the meter drives a current, A. */
export interface DrivenRange extends MeterRange {
  readonly testA: number;
}

/** A meter as its booklet describes it, or as its owner has measured it. Ranges go from the finest to the coarsest. */
export interface MeterProfile {
  readonly name: string;
  readonly volts: { readonly inputOhm: number; readonly ranges: readonly MeterRange[] };
  /** Past `complianceV` the current is no longer driven: such a reading, and one past the last range, is OL. */
  readonly ohms: { readonly complianceV: number; readonly ranges: readonly DrivenRange[] };
  readonly diode: { readonly complianceV: number; readonly ranges: readonly [DrivenRange] };
  /** It sounds below `closedBelowOhm`. */
  readonly continuity: { readonly complianceV: number; readonly closedBelowOhm: number; readonly ranges: readonly [DrivenRange] };
  readonly amps: { readonly ranges: readonly MeterRange[] };
}

const ranges = (decades: readonly number[], counts: number, percent: number, digits: number): MeterRange[] =>
  decades.map((upTo) => ({ upTo, resolution: upTo / counts, percent, digits }));

const driven = (list: readonly MeterRange[], testA: readonly number[]): DrivenRange[] =>
  list.map((range, i) => ({ ...range, testA: testA[i]! }));

/** An ordinary handheld meter of 6000 counts with 10 MΩ input. All values: common practice, no source. */
export const HANDHELD_METER: MeterProfile = {
  name: 'handheld, 6000 counts',
  volts: { inputOhm: 10e6, ranges: ranges([0.6, 6, 60, 600], 6000, 0.5, 2) },
  ohms: {
    complianceV: 1,
    ranges: driven(ranges([600, 6e3, 60e3, 600e3, 6e6, 60e6], 6000, 1, 3), [0.7e-3, 70e-6, 7e-6, 0.7e-6, 70e-9, 10e-9]),
  },
  diode: { complianceV: 2.6, ranges: [{ upTo: 2.6, resolution: 1e-3, percent: 1, digits: 2, testA: 1e-3 }] },
  continuity: { complianceV: 2.6, closedBelowOhm: 40, ranges: [{ upTo: 600, resolution: 0.1, percent: 1, digits: 3, testA: 1e-3 }] },
  amps: { ranges: ranges([6e-3, 60e-3, 0.6, 6], 6000, 1, 3) },
};

/** The finest range that holds a reading; the coarsest one for a reading past all. */
export function rangeFor(profile: MeterProfile, mode: MeterMode, value: number): MeterRange {
  const list: readonly MeterRange[] = profile[mode].ranges;
  const range = list.find(({ upTo }) => Math.abs(value) <= upTo) ?? list.at(-1);
  if (!range) throw new CircuitError('shape', `the meter "${profile.name}" has no range for ${mode}`);
  return range;
}

/**
 * How far off a reading may be, in its own unit: percent of the reading (not of the range) plus digits × resolution. The convention is that
 * of the makers' explanations; see checks/circuit/SOURCE.md.
 */
export function meterError(profile: MeterProfile, mode: MeterMode, value: number): number {
  const { percent, digits, resolution } = rangeFor(profile, mode, value);
  return (percent / 100) * Math.abs(value) + digits * resolution;
}

/** Standard uncertainty of a value that lies anywhere within ± a limit: limit / √3 (JCGM 100:2008, 4.3.7; from memory). */
export const standardUncertainty = (limit: number): number => limit / Math.sqrt(3);
