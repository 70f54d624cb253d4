import { expect, it } from 'vitest';
import { percent, table } from './table.ts';

it('makes columns as wide as they need to be, numbers ending at the same place', () => {
  expect(
    table(
      ['no', 'name'],
      [
        ['7', 'Blue'],
        ['112', 'Grey player'],
      ],
      [0],
    ),
  ).toEqual([' no  name', '  7  Blue', '112  Grey player']);
});

it('never shows a chance as certain or impossible when it is not', () => {
  expect([0, 0.001, 0.37, 0.999, 1].map(percent)).toEqual(['0 %', '<1 %', '37 %', '>99 %', '100 %']);
});
