import { describe, expect, it } from 'vitest';
import {
  awgDiameter,
  awgOf,
  COPPER,
  FOIL_ABOVE_STANDARD,
  FOILS,
  onderdonkFusing,
  preeceFusing,
  sectionOf,
  sheetResistance,
  trackArea2152,
  trackCurrent2152,
  trackCurrent2221,
  trackResistance,
  trackWidth2221,
  wireResistance,
} from '../../src/core/rework/index.ts';

/** Values, sources and traps: SOURCE.md. */
const MIL = 25.4e-6;
const OUNCE = 1.378 * MIL;
const track = (mil: number) => ({ widthM: mil * MIL, thicknessM: OUNCE });

describe('track current against IPC-2221', () => {
  it.each([
    [10, 10, 'external', 0.8855],
    [20, 10, 'external', 1.4637],
    [100, 10, 'external', 4.7011],
    [10, 10, 'internal', 0.4428],
    [20, 20, 'internal', 0.9928],
  ] as const)('of %d mil at a rise of %d K, %s, is %d A', (mil, rise, layer, amps) => {
    expect(trackCurrent2221(track(mil), rise, layer).value).toBeCloseTo(amps, 3);
  });

  it.each([
    [1, 'external', 11.826],
    [1, 'internal', 30.764],
    [2, 'external', 30.764],
  ] as const)('asks for the published width for %d A, %s', (amps, layer, mil) => {
    expect(trackWidth2221(amps, 10, OUNCE, layer).value / MIL).toBeCloseTo(mil, 2);
  });

  it('asks inside for exactly the width that twice the current asks outside, since k halves', () => {
    const inside = trackWidth2221(1, 10, OUNCE, 'internal').value;
    expect(inside / trackWidth2221(2, 10, OUNCE, 'external').value).toBeCloseTo(1, 12);
  });
});

describe('track current against the fit to IPC-2152', () => {
  it('takes the published sections for 1 A and 2 A', () => {
    expect(trackArea2152(1, 10)).toBeCloseTo(15.5129, 3);
    expect(trackArea2152(2, 10)).toBeCloseTo(54.5479, 3);
  });

  it('is turned round without loss', () => {
    const section = { widthM: 54.5479 * MIL, thicknessM: MIL };
    expect(trackCurrent2152(section, 10).value).toBeCloseTo(2, 4);
  });
});

describe('copper and foil', () => {
  it('is the annealed copper of 1913, and foil up to 5.7 % above it', () => {
    expect(COPPER).toEqual({ resistivity: 1.7241e-8, perKelvin: 0.00393 });
    expect(1 + FOIL_ABOVE_STANDARD).toBeCloseTo(1.057, 3);
  });

  it('keeps apart the conventions for an ounce of foil, 2.4 % from end to end', () => {
    const um = [FOILS['by-mass-8.93'].um, FOILS['by-mass-8.89'].um, FOILS['1.37-mil'].um, FOILS['1.378-mil'].um];
    [34.17, 34.33, 34.8, 35.0].forEach((value, i) => expect(um[i]).toBeCloseTo(value, 2));
    expect(um[3]! / um[0]! - 1).toBeCloseTo(0.024, 3);
  });

  it('gives the worked track at 20 and 60 °C, and both sheets', () => {
    const worked = { lengthM: 10e-3, widthM: 0.25e-3, thicknessM: 34.8e-6 };
    expect(trackResistance(worked).value * 1e3).toBeCloseTo(19.817, 3);
    expect(trackResistance(worked, 60).value * 1e3).toBeCloseTo(22.933, 2);
    expect(sheetResistance(34.8e-6) * 1e3).toBeCloseTo(0.49543, 4);
    expect(sheetResistance(35e-6) * 1e3).toBeCloseTo(0.4926, 4);
  });
});

/** [AWG, mm, Ω/km] of annealed solid wire at 20 °C. */
const WIRES = [
  [24, 0.5106, 84.2],
  [26, 0.4049, 133.9],
  [28, 0.3211, 212.9],
  [30, 0.2546, 338.5],
  [32, 0.2019, 538.3],
  [34, 0.1601, 856.0],
  [36, 0.127, 1361.0],
  [38, 0.1007, 2164.1],
  [40, 0.0799, 3441.1],
] as const;

describe('wire gauges against ASTM B258', () => {
  it.each(WIRES)('AWG %d is %d mm and %d Ω/km', (awg, mm, ohms) => {
    expect(awgDiameter(awg) * 1e3).toBeCloseTo(mm, 4);
    expect(Math.abs(wireResistance(awgDiameter(awg), 1000).value / ohms - 1)).toBeLessThan(5e-4);
    expect(awgOf(awgDiameter(awg))).toBeCloseTo(awg, 9);
  });

  it('has the 39th root of 92 from one gauge to the next', () => {
    expect(awgDiameter(30) / awgDiameter(31)).toBeCloseTo(1.1229322, 7);
  });

  it('is not rounded to tenths of a mil first, which would move AWG 40 by 3 %', () => {
    const rounded = Math.round((awgDiameter(40) / MIL) * 10) / 10;
    expect(wireResistance(rounded * MIL, 1000).value).toBeCloseTo(3541, -1);
    expect(wireResistance(awgDiameter(40), 1000).value).toBeLessThan(3445);
  });

  it('of stranded or tinned wire may be as much as the tables of cable have, and says so', () => {
    expect(wireResistance(awgDiameter(24), 1000).high).toBeGreaterThan(89.4);
    expect(wireResistance(awgDiameter(24), 1000).why).toMatch(/Stranded or tinned/);
  });
});

describe('fusing against Preece', () => {
  it.each([
    [0.0021, 1, 0.02],
    [0.0062, 5, 0.02],
    [0.0098, 10, 0.02],
    [0.0205, 30, 0.01],
    [0.0524, 123, 0.005],
  ])('a wire of %d inch melts at %d A', (inch, amps, within) => {
    expect(Math.abs(preeceFusing(inch * 25.4e-3).value / amps - 1)).toBeLessThan(within);
  });

  it.each([
    [30, 10.3],
    [36, 3.62],
    [40, 1.81],
  ])('AWG %d melts at %d A', (awg, amps) => {
    expect(Math.abs(preeceFusing(awgDiameter(awg)).value / amps - 1)).toBeLessThan(0.005);
  });
});

describe('fusing against Onderdonk', () => {
  it.each([
    [24, 1, 59.11],
    [30, 10, 4.65],
    [30, 1, 14.7],
    [30, 0.032, 82.2],
    [36, 1, 3.66],
    [40, 1, 1.45],
    [16, 5, 168.9],
  ])('AWG %d melts within %d s at %d A', (awg, seconds, amps) => {
    expect(Math.abs(onderdonkFusing(sectionOf(awgDiameter(awg)), seconds).value / amps - 1)).toBeLessThan(0.003);
  });

  it('has 234 + Ta below the line: the copied 234 − Ta would give 178 A for AWG 16', () => {
    const cmil = (awgDiameter(16) / MIL) ** 2;
    const copied = cmil * Math.sqrt(Math.log10(1 + (1083 - 25) / (234 - 25)) / (33 * 5));
    expect(copied).toBeCloseTo(178, 0);
    expect(onderdonkFusing(sectionOf(awgDiameter(16)), 5).high).toBeGreaterThan(copied);
    expect(onderdonkFusing(sectionOf(awgDiameter(16)), 5).value).toBeLessThan(170);
  });

  it('agrees with the short-circuit form for cables, (I/A)² t = 0.0297 log₁₀(…)', () => {
    const cable = Math.sqrt(0.0297 * Math.log10((1083 + 234) / (25 + 234)));
    const cmil = (awgDiameter(24) / MIL) ** 2;
    expect(onderdonkFusing(sectionOf(awgDiameter(24)), 1).value / (cable * cmil)).toBeCloseTo(1, 1);
  });

  it('is out of its range beyond 10 s', () => {
    expect(onderdonkFusing(1e-7, 11).inRange).toBe(false);
    expect(onderdonkFusing(1e-7, 10).inRange).toBe(true);
  });
});
