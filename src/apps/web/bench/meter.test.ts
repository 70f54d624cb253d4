import { describe, expect, it } from 'vitest';
import { press } from './number-pad.tsx';
import { readMeter } from './read-meter.ts';
import { verdict } from './verdict.ts';

const type = (...keys: string[]): string => keys.reduce(press, '');

describe('the number pad', () => {
  it('writes what its keys say, in the form that a reading is understood in', () => {
    expect(readMeter(type('3', '.', '2', '8'), 'volts')).toEqual({ ok: true, value: 3.28 });
    expect(readMeter(type('4', 'k', '7'), 'ohms')).toEqual({ ok: true, value: 4700 });
    expect(readMeter(type('5', '1', '2', 'mV'), 'diode')).toEqual({ ok: true, value: 0.512 });
    expect(readMeter(type('1', '4', '0', 'mA'), 'amps')).toEqual({ ok: true, value: 0.14 });
    expect(readMeter(type('5', '−'), 'volts')).toEqual({ ok: true, value: -5 });
    expect(readMeter(type('7', 'OL'), 'ohms')).toEqual({ ok: true, value: null });
  });

  it('rubs out one key at a time, a unit as a whole', () => {
    expect(type('5', '1', 'mV', '⌫')).toBe('51');
    expect(type('5', '1', '⌫')).toBe('5');
    expect(type('OL', '⌫')).toBe('');
    expect(type('5', 'Clear')).toBe('');
    expect(type('OL', '4')).toBe('4');
  });
});

describe('a reading for a point', () => {
  it('is refused in another mode than that of the point', () => {
    const answer = readMeter('4k7', 'volts');
    expect(answer.ok).toBe(false);
    expect(!answer.ok && answer.message).toMatch(/measured in volts.*reading in ohms.*Which is it/);
  });
});

describe('the verdict on a reading', () => {
  it('is said in spreads of good boards', () => {
    expect(verdict('3.3 V', 0.4)).toBe('as good (0.4 spreads off)');
    expect(verdict('3.3 V', -3)).toBe('somewhat low (3.0 spreads)');
    expect(verdict('3.3 V', 250)).toBe('high (over 100 spreads)');
    expect(verdict(null, null)).toBe('no reference');
  });
});
