import { describe, expect, it } from 'vitest';
import { readingsFrom } from './readings-csv.ts';
import { ModelFile } from './schema.ts';

const points = ModelFile.shape.points.parse([
  { id: 'V33', name: 'V33', block: 'x', mode: 'volts' },
  { id: 'R', name: 'R', block: 'x', mode: 'ohms' },
  { id: 'D', name: 'D', block: 'x', mode: 'diode' },
  { id: 'I', name: 'I', block: 'x', mode: 'amps' },
]);
const HEADER = ['board', 'point', 'mode', 'value', 'unit'];
const read = (cells: string[], commaIsDecimal = false) =>
  readingsFrom(
    [HEADER, cells].map((each, index) => ({ line: index + 1, cells: each })),
    { points },
    commaIsDecimal,
  );
const valueOf = (cells: string[], commaIsDecimal = false): number | null | undefined => read(cells, commaIsDecimal).readings[0]?.value;

describe('readingsFrom', () => {
  it.each<[string, string, string, string, number]>([
    ['V33', 'volts', '3.28', 'V', 3.28],
    ['V33', 'volts', '-12', 'mV', -0.012],
    ['D', 'diode', '512', 'mV', 0.512],
    ['R', 'ohms', '47', 'Ω', 47],
    ['R', 'ohms', '47', 'ohm', 47],
    ['R', 'ohms', '4.7', 'kΩ', 4700],
    ['R', 'ohms', '4.7', 'k', 4700],
    ['R', 'ohms', '2.2', 'M', 2.2e6],
    ['I', 'amps', '140', 'mA', 0.14],
    ['I', 'amps', '0.5', 'A', 0.5],
  ])('reads %s in %s: %s %s', (point, mode, value, unit, expected) => {
    expect(valueOf(['good-1', point, mode, value, unit])).toBeCloseTo(expected, 9);
  });

  it('keeps OL as null in ohms and diode mode, with or without a unit', () => {
    expect(valueOf(['good-1', 'R', 'ohms', 'OL', ''])).toBeNull();
    expect(valueOf(['good-1', 'D', 'diode', 'ol', 'V'])).toBeNull();
  });

  it('takes a comma as the decimal point only where it cannot be anything else', () => {
    expect(valueOf(['good-1', 'V33', 'volts', '3,28', 'V'])).toBe(3.28);
    expect(valueOf(['good-1', 'D', 'diode', '0,512', 'V'])).toBe(0.512);
    expect(valueOf(['good-1', 'R', 'ohms', '1,234', 'k'], true)).toBe(1234);
    expect(read(['good-1', 'R', 'ohms', '1,234', 'k']).problems).toMatchObject([
      { line: 2, field: 'value', message: '"1,234" may be 1.234 or 1234' },
    ]);
  });

  it.each<[string, string[], string]>([
    ['no board', ['', 'V33', 'volts', '3.3', 'V'], 'board'],
    ['an unknown point', ['good-1', 'V34', 'volts', '3.3', 'V'], 'point'],
    ['another mode than that of the point', ['good-1', 'V33', 'ohms', '3.3', 'Ω'], 'mode'],
    ['text for a number', ['good-1', 'V33', 'volts', 'about 3', 'V'], 'value'],
    ['a number with grouped thousands', ['good-1', 'R', 'ohms', '1.234,5', 'Ω'], 'value'],
    ['a unit of another mode', ['good-1', 'V33', 'volts', '3.3', 'kΩ'], 'unit'],
    ['no unit', ['good-1', 'V33', 'volts', '3.3', ''], 'unit'],
    ['millivolts and megavolts mixed up', ['good-1', 'V33', 'volts', '3.3', 'MV'], 'unit'],
    ['OL in volts', ['good-1', 'V33', 'volts', 'OL', 'V'], 'value'],
    ['a resistance below zero', ['good-1', 'R', 'ohms', '-3', 'Ω'], 'value'],
    ['a cut number', ['good-1', 'V33', 'volts', '3', '28', 'V'], 'value'],
  ])('refuses %s and names the field', (_, cells, field) => {
    const { readings, problems } = read(cells);
    expect(readings).toEqual([]);
    expect(problems).toMatchObject([{ ok: false, code: 'model-readings', line: 2, field }]);
    expect(problems[0]!.next).toMatch(/\.$/);
  });

  it('finds columns in any order, passes empty lines over, and keeps the good rows beside the bad', () => {
    const rows = [
      { line: 1, cells: ['unit', 'Value', 'mode', 'point', 'board'] },
      { line: 2, cells: [''] },
      { line: 3, cells: ['V', '3.31', 'volts', 'V33', 'good-1'] },
      { line: 4, cells: ['V', 'x', 'volts', 'V33', 'good-2'] },
      { line: 5, cells: ['V', '3.29', 'volts', 'V33', 'good-3'] },
    ];
    const { readings, problems } = readingsFrom(rows, { points }, false);
    expect(readings.map(({ board, value }) => [board, value])).toEqual([
      ['good-1', 3.31],
      ['good-3', 3.29],
    ]);
    expect(problems.map(({ line }) => line)).toEqual([4]);
  });

  it('refuses a header that lacks a column or has a strange one', () => {
    const header = (cells: string[]) => readingsFrom([{ line: 1, cells }], { points }, false).problems;
    expect(header(['board', 'point', 'mode', 'value'])).toMatchObject([{ line: 1, field: 'header', message: 'has no column "unit"' }]);
    expect(header([...HEADER, 'note'])).toMatchObject([{ message: 'has a column "note" that is not known' }]);
    expect(header([...HEADER, 'unit'])).toMatchObject([{ message: 'has the column "unit" twice' }]);
  });
});
