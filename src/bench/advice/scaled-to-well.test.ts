import fc from 'fast-check';
import { expect, it } from 'vitest';
import { scaledToWell } from './scaled-to-well.ts';

const noneOf = (chances: Readonly<Record<string, number>>) => Object.values(chances).reduce((none, chance) => none * (1 - chance), 1);

it('keeps single chances that already agree with the chance of none', () => {
  const scaled = scaledToWell({ a: 0.2, b: 0.5 }, 0.4);
  expect(scaled.a).toBeCloseTo(0.2, 9);
  expect(scaled.b).toBeCloseTo(0.5, 9);
});

it('makes an assembly bad of which one of two faults is sure', () => {
  expect(noneOf(scaledToWell({ a: 0.5, b: 0.5 }, 0.01))).toBeCloseTo(0.01, 6);
});

it('meets any chance of none with chances from 0 to 1', () => {
  const chance = fc.double({ min: 0.001, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.array(chance, { minLength: 1, maxLength: 6 }), fc.double({ min: 0, max: 1, noNaN: true }), (list, well) => {
      const scaled = scaledToWell(Object.fromEntries(list.map((c, i) => [`f${i}`, c])), well);
      expect(Object.values(scaled).every((c) => c >= 0 && c <= 1)).toBe(true);
      expect(Math.abs(noneOf(scaled) - well)).toBeLessThan(1e-6);
    }),
  );
});

it('leaves an assembly without any known fault alone', () => {
  expect(scaledToWell({ a: 0 }, 0.5)).toEqual({ a: 0 });
});
