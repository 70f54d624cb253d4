import { describe, expect, it } from 'vitest';
import { placementFrom } from './placement-csv.ts';
import type { ModelFile } from './schema.ts';

const file = {
  board: { width_mm: 60, height_mm: 40 },
  blocks: [
    { id: 'switch', name: 'Switch' },
    { id: 'cells', name: 'Cells' },
  ],
} satisfies Pick<ModelFile, 'board' | 'blocks'>;

const HEADER = ['Ref', 'X', 'Y', 'Rotation', 'Side', 'Value', 'Package', 'Block', 'Nets'];
const GOOD = ['S1', '12.5', '30', '-90', 'front', 'Slide switch', 'switch-3', 'switch', 'VBAT vsys -'];

/** The rows read as lines 2 and on, under the usual header. */
const read = (...rows: string[][]) =>
  placementFrom(
    [HEADER, ...rows].map((cells, i) => ({ line: i + 1, cells })),
    file,
    false,
  );
const changed = (column: string, cell: string): string[] => GOOD.map((known, i) => (HEADER[i] === column ? cell : known));

describe('placementFrom', () => {
  it('reads a part with its place, its package and the net of each pin', () => {
    expect(read(GOOD)).toEqual({
      problems: [],
      placed: [
        {
          line: 2,
          ref: 'S1',
          x: 12.5,
          y: 30,
          rotation: -90,
          side: 'front',
          value: 'Slide switch',
          package: 'SWITCH-3',
          block: 'switch',
          nets: ['vbat', 'vsys', null],
        },
      ],
    });
  });

  it('takes columns in any order and case, top and bottom for the sides, and does without Nets', () => {
    const rows = [
      { line: 1, cells: ['block', 'PACKAGE', 'value', 'side', 'rotation', 'y', 'x', 'ref'] },
      { line: 2, cells: ['switch', '0603', '10k', 'Bottom', '0', '3', '4', 'R1'] },
    ];
    expect(placementFrom(rows, file, false).placed).toMatchObject([{ ref: 'R1', x: 4, y: 3, side: 'back', nets: [] }]);
  });

  it('asks no place of a part that is off the board', () => {
    expect(read(['BT1', '', '', '', 'off', 'Two cells', '', 'cells', '']).placed).toMatchObject([{ ref: 'BT1', side: 'off', package: '' }]);
  });

  it('takes a decimal comma between semicolons', () => {
    const rows = [HEADER, changed('X', '12,5')].map((cells, i) => ({ line: i + 1, cells }));
    expect(placementFrom(rows, file, true).placed).toMatchObject([{ x: 12.5 }]);
  });

  it.each([
    ['Ref', '1S', 'ref'],
    ['Ref', '', 'ref'],
    ['X', '12.5mm', 'x'],
    ['X', '12,5', 'x'],
    ['Y', '', 'y'],
    ['Rotation', 'left', 'rotation'],
    ['Side', 'middle', 'side'],
    ['Package', 'SWITCH-4', 'package'],
    ['Package', 'toString', 'package'],
    ['Block', 'swich', 'block'],
    ['Nets', 'vbat vsys', 'nets'],
    ['X', '60.5', 'x'],
    ['Y', '-0.5', 'y'],
  ])('tells a bad cell under %s (%j) by line and field, and keeps the other lines', (column, cell, field) => {
    const { placed, problems } = read(changed(column, cell), changed('Ref', 'S2'));
    expect(problems).toMatchObject([{ ok: false, code: 'model-placement', line: 2, field }]);
    expect(problems[0]!.message).not.toMatch(/\.$/);
    expect(problems[0]!.next).toMatch(/\.$/);
    expect(placed.map(({ ref }) => ref)).toEqual(['S2']);
  });

  it('tells a reference that is placed twice, in any case, with the line that has it already', () => {
    const { placed, problems } = read(GOOD, changed('Ref', 's1'));
    expect(placed).toHaveLength(1);
    expect(problems).toMatchObject([{ line: 3, field: 'ref', message: '"s1" is placed a second time; line 2 has it already' }]);
  });

  it.each<[string[], string]>([
    [HEADER.filter((name) => name !== 'Side'), 'has no column "side"'],
    [[...HEADER, 'Height'], 'has a column "height" that is not known'],
    [[...HEADER, 'X'], 'has the column "x" twice'],
    [[], 'has no column "ref"'],
  ])('refuses a header that is not whole: %j', (header, message) => {
    expect(placementFrom([{ line: 1, cells: header }], file, false).problems).toMatchObject([{ line: 1, field: 'header', message }]);
  });

  it('tells a line with a comma too many', () => {
    expect(read([...GOOD, 'x']).problems).toMatchObject([{ line: 2, field: 'value', message: 'has 10 fields where the header has 9' }]);
  });
});
