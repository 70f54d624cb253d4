import { nearestInSeries, type Series } from './codes/e-series.ts';
import { assertPositive, ReworkError } from './rework-error.ts';
import type { Reckoning } from './reckoning.ts';

export interface Divider {
  readonly inV: number;
  /** From the input to the tap, and from the tap to ground, Ω. */
  readonly upper: number;
  readonly lower: number;
  /** Share that each resistor may be off. */
  readonly tolerance: number;
  /** What hangs on the tap, Ω; left out when nothing does. */
  readonly load?: number;
}

/** V at the tap: Vin R2 / (R1 + R2), the load in parallel with R2. The range is that of both resistors at their worst. */
export function dividerVolts({ inV, upper, lower, tolerance, load }: Divider): Reckoning {
  assertPositive({ upper, lower, ...(load === undefined ? {} : { load }) });
  if (!(tolerance >= 0 && tolerance < 1)) throw new ReworkError('bad-number', `a tolerance is a share from 0 to 1, got ${tolerance}`);
  const tap = (r1: number, r2: number): number => {
    const under = load === undefined ? r2 : (r2 * load) / (r2 + load);
    return (inV * under) / (r1 + under);
  };
  const ends = [tap(upper * (1 - tolerance), lower * (1 + tolerance)), tap(upper * (1 + tolerance), lower * (1 - tolerance))];
  return {
    value: tap(upper, lower),
    unit: 'V',
    low: Math.min(...ends),
    high: Math.max(...ends),
    why: `Both resistors ${tolerance * 100} % off, in opposite directions.`,
    formula: load === undefined ? 'V = Vin R2 / (R1 + R2)' : "V = Vin R2' / (R1 + R2'), R2' = R2 and the load in parallel",
    source: "Ohm's and Kirchhoff's laws",
    range: 'resistances that do not depend on the voltage',
    inRange: true,
  };
}

/** The resistor before a light-emitting diode, and what it must bear. */
export interface LedResistor {
  readonly exact: Reckoning;
  /** The next value of a series at or above it, Ω. */
  readonly ohms: number;
  readonly currentA: number;
  readonly watts: number;
}

/**
 * R = (V − Vf) / I. Throws `ReworkError` where the supply is not above the drop of the diode. The range is that of a drop
 * that is 0.2 V off, as diodes of one kind are (common practice, no source).
 */
export function ledResistor(supplyV: number, dropV: number, currentA: number, series: Series = 'E12'): LedResistor {
  assertPositive({ supplyV, dropV, currentA, 'supply above the drop': supplyV - dropV });
  const value = (supplyV - dropV) / currentA;
  const ohms = atLeast(value, series);
  const through = (supplyV - dropV) / ohms;
  const exact: Reckoning = {
    value,
    unit: 'Ω',
    low: Math.max(0, supplyV - dropV - 0.2) / currentA,
    high: (supplyV - dropV + 0.2) / currentA,
    why: 'Diodes of one kind differ by some 0.2 V; with little voltage left over, the current then differs much.',
    formula: 'R = (V − Vf) / I',
    source: "Ohm's law; spread of the drop: common practice, no source",
    range: 'at least 0.5 V across the resistor',
    inRange: supplyV - dropV >= 0.5,
  };
  return { exact, ohms, currentA: through, watts: through ** 2 * ohms };
}

function atLeast(value: number, series: Series): number {
  const near = nearestInSeries(value, series);
  return near >= value * (1 - 1e-9) ? near : nextAbove(near, value, series);
}

function nextAbove(near: number, value: number, series: Series): number {
  let [above, factor] = [near, 1.01];
  while (above < value) {
    above = nearestInSeries(near * factor, series);
    factor *= 1.01;
  }
  return above;
}
