import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseReading } from './parse-reading.ts';

const reads = (text: string): unknown => {
  const parsed = parseReading(text);
  return parsed.ok ? [parsed.mode, parsed.value] : parsed.code;
};

describe('what a person types from a meter', () => {
  it.each([
    ['3.28', undefined, 3.28],
    [' 3,28 V ', 'volts', 3.28],
    ['-0.02V', 'volts', -0.02],
    ['−12 mV', 'volts', -0.012],
    ['512mV', 'volts', 0.512],
    ['.5 volts', 'volts', 0.5],
    ['140 mA', 'amps', 0.14],
    ['35 uA', 'amps', 0.000035],
    ['35 µA', 'amps', 0.000035],
    ['0.2 amps', 'amps', 0.2],
    ['12.5 kΩ', 'ohms', 12_500],
    ['12.5k', 'ohms', 12_500],
    ['1M ohm', 'ohms', 1_000_000],
    ['47 ohms', 'ohms', 47],
    ['47 Ω', 'ohms', 47],
    ['20 mΩ', 'ohms', 0.02],
    ['12m ohm', 'ohms', 0.012],
    ['0.512 diode', 'diode', 0.512],
    ['512 mV diode', 'diode', 0.512],
    ['512m diode', 'diode', 0.512],
    ['diode 0.512', 'diode', 0.512],
    ['Diode: 0,512', 'diode', 0.512],
    ['diode OL', 'diode', null],
    ['3.28 VDC', 'volts', 3.28],
    ['2,2M', 'ohms', 2_200_000],
    ['OL', undefined, null],
    ['0L', undefined, null],
    ['O.L', undefined, null],
    ['ol diode', 'diode', null],
    ['OL ohms', 'ohms', null],
    ['OL MΩ', 'ohms', null],
  ])('%s', (text, mode, value) => {
    expect(reads(text)).toEqual([mode, value]);
  });

  // Source: the letter as decimal point, IEC 60062 (check values 4.4: 5R1, R47, 4K7).
  it.each([
    ['4k7', 4700],
    ['4K7', 4700],
    ['5R1', 5.1],
    ['R47', 0.47],
    ['1M2', 1_200_000],
    ['100R', 100],
    ['10k', 10_000],
    ['4k7 Ω', 4700],
    ['4k7ohm', 4700],
    ['1M', 1_000_000],
  ])('%s by IEC 60062', (text, value) => {
    expect(reads(text)).toEqual(['ohms', value]);
  });

  it.each([
    ['', 'reading-empty'],
    ['  ', 'reading-empty'],
    ['about three', 'reading-unclear'],
    ['3.28.1', 'reading-unclear'],
    ['1,234.5', 'reading-unclear'],
    ['3 furlongs', 'reading-unclear'],
    ['4k7 diode', 'reading-unclear'],
    ['R', 'reading-unclear'],
    ['12m', 'reading-ambiguous'],
    ['512 diode', 'reading-impossible'],
    ['-5 ohm', 'reading-impossible'],
    ['1e9', 'reading-unclear'],
    ['NaN', 'reading-unclear'],
  ])('refuses "%s"', (text, code) => {
    expect(reads(text)).toBe(code);
  });

  it('says how to write it', () => {
    const parsed = parseReading('12m');
    expect(parsed.ok ? '' : parsed.message).toContain('12 mV, 12 mA');
  });

  it('gives a finite number, OL or a sentence for whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[-+.,0-9OLkKMmRVAΩ ]{0,12}( diode)?$/)), (text) => {
        const parsed = parseReading(text);
        if (!parsed.ok) return parsed.message.length > 20;
        return parsed.value === null || Number.isFinite(parsed.value);
      }),
      { numRuns: 2000 },
    );
  });

  it('reads a value with a prefix as the same value without', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), (milli) => {
        expect(reads(`${milli} mV`)).toEqual(['volts', milli / 1000]);
      }),
    );
  });
});
