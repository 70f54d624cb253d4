import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { csvText } from './csv-text.ts';

test('quotes what needs it, so that a reader of CSV gets the same cells back', () => {
  const rows = [
    ['a, b', 'say "no"', 'two\nlines'],
    ['plain', '', 'ü'],
  ];
  expect(Papa.parse(csvText(['x', 'y', 'z'], rows).trim(), { newline: '\r\n' }).data).toEqual([['x', 'y', 'z'], ...rows]);
});

test.each(['=1+1', '+44', '-cmd', '@SUM(A1)', '\t=1'])('a text that would begin a formula, %j, does not', (text) => {
  expect(csvText(['x'], [[text]]).split('\r\n')[1]).toContain(`'${text}`);
});

test('a number below zero stays a number', () => {
  expect(csvText(['x'], [[-250], ['-2.50'], [null]])).toBe('x\r\n-250\r\n-2.50\r\n\r\n');
});
