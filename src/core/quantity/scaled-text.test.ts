import { expect, it } from 'vitest';
import { scaledText } from './index.ts';

it.each([
  [4700, 'Ω', '4.7 kΩ'],
  [-0.512, 'V', '−512 mV'],
  [0, 'A', '0 A'],
  [0.99999, 'A', '1 A'],
  [2.2e-11, 'F', '22 pF'],
  [3e-15, 'F', '0.003 pF'],
  [1.5e12, 'Ω', '1500 GΩ'],
] as const)('%d %s is written as %s', (value, unit, text) => {
  expect(scaledText(value, unit)).toBe(text);
});

it('is rounded to the figures that are asked for', () => {
  expect(scaledText(0.88554, 'A', 3)).toBe('886 mA');
});
