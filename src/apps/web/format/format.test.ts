import { describe, expect, it } from 'vitest';
import { money, roughMoney, signedMoney } from './money.ts';
import { chance, counted, duration } from './number.ts';
import { reading } from './reading.ts';

describe('money', () => {
  it('has as many digits as its currency', () => {
    expect(money(1250, 'GBP')).toContain('12.50');
    expect(money(1250, 'JPY')).toMatch(/1,250$/);
    expect(money(1250, 'KWD')).toContain('1.250');
  });

  it('says a loss with a true minus, a gain with a plus', () => {
    expect(money(-300, 'GBP')).toMatch(/^−/);
    expect(signedMoney(300, 'GBP')).toMatch(/^\+/);
    expect(signedMoney(0, 'GBP')).not.toMatch(/^[+−]/);
  });

  it('is rounded to whole units as an estimate, and never minus nothing', () => {
    expect(roughMoney(1251, 'GBP')).toMatch(/13$/);
    expect(roughMoney(-20, 'GBP')).toMatch(/^[^−-]*0$/);
  });
});

describe('numbers', () => {
  it('says the ends of chance in words', () => {
    expect([0.001, 0.374, 0.999].map(chance)).toEqual(['under 1 %', '37 %', 'over 99 %']);
  });

  it('says time in minutes and hours', () => {
    expect([0, 2.5, 59.6, 80].map(duration)).toEqual(['0 min', '2.5 min', '1 h', '1 h 20 min']);
  });

  it('counts one and many', () => {
    expect([counted(1, 'photo'), counted(2, 'photo'), counted(2, 'box', 'boxes')]).toEqual(['1 photo', '2 photos', '2 boxes']);
  });
});

describe('readings', () => {
  it('are said with the prefix that a meter would choose', () => {
    expect(reading(4700, 'ohms')).toBe('4.7 kΩ');
    expect(reading(3.28, 'volts')).toBe('3.28 V');
    expect(reading(0.14, 'amps')).toBe('140 mA');
    expect(reading(999.7, 'ohms')).toBe('999.7 Ω');
    expect(reading(999.97, 'ohms')).toBe('1 kΩ');
    expect(reading(0, 'volts')).toBe('0 V');
    expect(reading(-0.05, 'volts')).toBe('−50 mV');
  });

  it('keep a diode drop in volts, and say OL for no value', () => {
    expect(reading(0.512, 'diode')).toBe('0.512 V diode');
    expect(reading(null, 'ohms')).toBe('OL');
  });
});
