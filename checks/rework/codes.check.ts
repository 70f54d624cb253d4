import { describe, expect, it } from 'vitest';
import {
  chipSize,
  DIELECTRICS,
  EIA_96,
  eSeries,
  readCapacitorCode,
  readResistorCode,
  SMALL_TOLERANCES,
  TOLERANCES,
  voltsOfCode,
} from '../../src/core/rework/index.ts';

/** Values, sources and traps: SOURCE.md. */
const E96 = [
  100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137, 140, 143, 147, 150, 154, 158, 162, 165, 169, 174, 178, 182, 187,
  191, 196, 200, 205, 210, 215, 221, 226, 232, 237, 243, 249, 255, 261, 267, 274, 280, 287, 294, 301, 309, 316, 324, 332, 340, 348, 357,
  365, 374, 383, 392, 402, 412, 422, 432, 442, 453, 464, 475, 487, 499, 511, 523, 536, 549, 562, 576, 590, 604, 619, 634, 649, 665, 681,
  698, 715, 732, 750, 768, 787, 806, 825, 845, 866, 887, 909, 931, 953, 976,
];
const E12 = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];
const E24 = [1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];

describe('the series of IEC 60063', () => {
  it('has the 96 values of E96 by its rule', () => {
    expect(eSeries('E96').map((value) => Math.round(value * 100))).toEqual(E96);
  });

  it('has E12 and E24 with the values that depart from the rule, 4.3 among them', () => {
    expect(eSeries('E12')).toEqual(E12);
    expect(eSeries('E24')).toEqual(E24);
  });

  it('has 9.20 and not 9.19 in E192', () => {
    expect(eSeries('E192')).toHaveLength(192);
    expect(eSeries('E192')).toContain(9.2);
    expect(eSeries('E192')).not.toContain(9.19);
  });
});

const first = (answer: ReturnType<typeof readResistorCode>) => (answer.ok ? answer.readings[0]! : null);
const eia = (mark: string) => {
  const answer = readResistorCode(mark);
  return answer.ok ? answer.readings.find(({ notation }) => notation === 'eia-96') : undefined;
};

describe('marks on resistors', () => {
  it.each([
    ['220', 22],
    ['12R0', 12],
    ['472', 4700],
    ['1002', 10_000],
    ['5R1', 5.1],
    ['R47', 0.47],
    ['4K7', 4700],
  ])('%s is %d Ω', (mark, ohms) => {
    expect(first(readResistorCode(mark))!.value).toBe(ohms);
  });

  it.each([
    ['01C', 10_000],
    ['68X', 49.9],
    ['18B', 1500],
    ['30A', 200],
    ['11B', 1270],
    ['12X', 13],
    ['01D', 100_000],
    ['01Y', 1],
  ])('%s is %d Ω by EIA-96', (mark, ohms) => {
    expect(eia(mark)!.value).toBe(ohms);
  });

  it('has the published multipliers: A is 1 and Y is 0.01', () => {
    expect(EIA_96).toEqual({ Z: 0.001, Y: 0.01, R: 0.01, X: 0.1, S: 0.1, A: 1, B: 10, H: 10, C: 100, D: 1e3, E: 1e4, F: 1e5 });
  });

  it('keeps 12X by EIA-96 apart from 120 by three digits', () => {
    expect(eia('12X')!.value).toBe(13);
    expect(first(readResistorCode('120'))!.value).toBe(12);
  });
});

describe('tolerance letters of IEC 60062', () => {
  it('are shares, and pF below 10 pF', () => {
    expect(TOLERANCES).toEqual({ B: 0.001, C: 0.0025, D: 0.005, F: 0.01, G: 0.02, J: 0.05, K: 0.1, M: 0.2 });
    expect(SMALL_TOLERANCES).toEqual({ B: 0.1e-12, C: 0.25e-12, D: 0.5e-12, F: 1e-12, G: 2e-12 });
  });
});

describe('marks on capacitors', () => {
  it.each([
    ['104', 100e-9],
    ['478', 0.47e-12],
    ['229', 2.2e-12],
  ])('%s is %d F', (mark, farads) => {
    expect(first(readCapacitorCode(mark))!.value).toBeCloseTo(farads, 24);
  });

  it.each([
    ['1H', 50],
    ['1E', 25],
    ['1C', 16],
    ['0J', 6.3],
  ])('%s is %d V', (code, volts) => {
    expect(voltsOfCode(code)).toBe(volts);
  });

  it('knows how far the ceramics move', () => {
    expect(DIELECTRICS.X7R).toEqual({ lowC: -55, highC: 125, below: 0.15, above: 0.15 });
    expect(DIELECTRICS.X5R).toEqual({ lowC: -55, highC: 85, below: 0.15, above: 0.15 });
    expect(DIELECTRICS.Y5V).toEqual({ lowC: -30, highC: 85, below: 0.82, above: 0.22 });
    // 30 ppm/K over the 100 K from 25 to 125 °C.
    expect(DIELECTRICS.C0G.above).toBeCloseTo(30e-6 * 100, 9);
  });
});

const SIZES = [
  ['01005', '0402'],
  ['0201', '0603'],
  ['0402', '1005'],
  ['0603', '1608'],
  ['0805', '2012'],
  ['1206', '3216'],
  ['1210', '3225'],
  ['1812', '4532'],
  ['2010', '5025'],
  ['2512', '6332'],
] as const;

describe('chip sizes', () => {
  it.each(SIZES)('%s is %s in metric', (imperial, metric) => {
    expect(chipSize(imperial, 'imperial')).toMatchObject({ ok: true, size: { imperial, metric } });
    expect(chipSize(metric, 'metric')).toMatchObject({ ok: true, size: { imperial, metric } });
  });

  it('are asked for where a bare number names two', () => {
    expect(chipSize('0402')).toMatchObject({ code: 'imperial-or-metric', asImperial: { lengthMm: 1 }, asMetric: { imperial: '01005' } });
    expect(chipSize('0603')).toMatchObject({ code: 'imperial-or-metric', asMetric: { imperial: '0201' } });
    expect(chipSize('0805').ok).toBe(true);
  });
});
