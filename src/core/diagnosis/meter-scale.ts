import type { TestPoint } from './model.ts';

/**
 * Scales on which a meter's scatter is about the same everywhere: asinh(V / 50 mV), ln(Ω + 0.1), plain diode volts,
 * ln(A + 10 µA). Common practice, no source.
 */
export interface MeterScale {
  readonly of: (value: number) => number;
  /** Slope of `of` at a value. */
  readonly slope: (value: number) => number;
  /** The least scatter on that scale: meter and temperature. */
  readonly floor: number;
  /** The largest reading that is thought of. */
  readonly top: number;
  /** Scatter of readings of a dead short or a dead rail. */
  readonly nearZero: number;
  /** Whether the meter can show OL for want of a path. */
  readonly hasOl: boolean;
}

export const METER_SCALES: Readonly<Record<TestPoint['mode'], MeterScale>> = {
  volts: { of: (v) => Math.asinh(v / 0.05), slope: (v) => 1 / Math.hypot(v, 0.05), floor: 0.01, top: 30, nearZero: 0.5, hasOl: false },
  ohms: {
    of: (r) => Math.log(Math.max(r, 0) + 0.1),
    slope: (r) => 1 / (Math.max(r, 0) + 0.1),
    floor: 0.02,
    top: 1e7,
    nearZero: 1,
    hasOl: true,
  },
  diode: { of: (v) => v, slope: () => 1, floor: 0.005, top: 3, nearZero: 0.02, hasOl: true },
  amps: {
    of: (i) => Math.log(Math.max(i, 0) + 1e-5),
    slope: (i) => 1 / (Math.max(i, 0) + 1e-5),
    floor: 0.03,
    top: 5,
    nearZero: 1,
    hasOl: false,
  },
};
