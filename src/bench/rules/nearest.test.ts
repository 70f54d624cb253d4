import { expect, test } from 'vitest';
import { nearest } from './nearest.ts';

test('puts the most alike first', () => {
  expect(nearest('ligth', ['power', 'light', 'sound'])).toBe('light, power, sound');
});

test('lists six at most and says how many more there are', () => {
  expect(nearest('n4', ['n1', 'n2', 'n3', 'n4', 'n5', 'n6', 'n7', 'n8'])).toBe('n4, n1, n2, n3, n5, n6 and 2 more');
});

test('says so when there are none', () => {
  expect(nearest('x', [])).toBe('none yet');
});
