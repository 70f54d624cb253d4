import { describe, expect, it } from 'vitest';
import { press } from './number-pad.tsx';
import { pointTitle, pointWords } from './point-words.ts';
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
  it('takes a bare m for milli of what the point is measured in, but not in ohms, where it may be mega', () => {
    expect(readMeter('220m', 'volts')).toEqual({ ok: true, value: 0.22 });
    expect(readMeter('220m', 'amps')).toEqual({ ok: true, value: 0.22 });
    expect(readMeter('512m', 'diode')).toEqual({ ok: true, value: 0.512 });
    expect(readMeter('220m', 'ohms')).toMatchObject({ ok: false, message: expect.stringContaining('220 mΩ') });
  });

  it('asks which mode is right, and keeps the value for the answer', () => {
    expect(readMeter('4k7', 'volts')).toMatchObject({ ok: false, said: 'ohms', value: 4700 });
    expect(readMeter('OL diode', 'ohms')).toMatchObject({ ok: false, said: 'diode', value: null });
  });

  it('is refused in another mode than that of the point', () => {
    const answer = readMeter('4k7', 'volts');
    expect(answer.ok).toBe(false);
    expect(!answer.ok && answer.message).toMatch(/measured in volts.*reading in ohms.*Which is it/);
  });
});

describe('the verdict on a reading', () => {
  it('is said in spreads of good boards', () => {
    expect(verdict('3.3 V', 0.4, 3.3)).toBe('as good (0.4 spreads off)');
    expect(verdict('3.3 V', -3, 3.2)).toBe('somewhat low (3.0 spreads)');
    expect(verdict('3.3 V', 250, 9)).toBe('high (over 100 spreads)');
    expect(verdict(null, null, 1)).toBe('no reference');
  });

  it('says OL in words, for it is no distance', () => {
    expect(verdict('3.3 V', null, null)).toBe('OL, not a number');
    expect(verdict('OL on 3 good boards', null, 4)).toBe('a number, not OL');
    expect(verdict('OL by its circuit', null, null)).toBe('as good');
  });
});

it('a point is called by its name, its mode once, and how it is fed', () => {
  expect(pointTitle({ name: 'V33 to ground', mode: 'diode' })).toBe('V33 to ground, diode');
  expect(pointWords({ name: 'V33 in volts', mode: 'volts', power: { name: 'On its cell' } })).toBe('V33 in volts, on its cell');
});
