import { describe, expect, it } from 'vitest';
import { mapPlacement, type MappingDefaults } from './map-placement.ts';
import { guessColumns } from './placement-columns.ts';

const DEFAULTS: MappingDefaults = {
  blockOf: (ref) => (ref.startsWith('U') ? 'processor' : 'board'),
  packages: ['0603', 'SOT-23', 'SOT-23-5'],
  backIsMirrored: false,
  boardWidthMm: 70,
};
const table = (text: string) => text.split('\n').map((line, i) => ({ line: i + 1, cells: line.split(';') }));
const cellsOf = (text: string) => table(text).map(({ cells }) => cells);
const mapped = (text: string, defaults: Partial<MappingDefaults> = {}) => {
  const { rows, unread } = mapPlacement(table(text), guessColumns(cellsOf(text)).mapping, { ...DEFAULTS, ...defaults });
  return { rows: rows.map(({ cells }) => cells.join(',')), unread };
};

describe('the columns of a foreign table of places', () => {
  it('are known by their names, whatever their order and case, with the unit in brackets', () => {
    const guess = guessColumns(
      cellsOf('Made by hand\nDesignator;Footprint;Mid X (mil);Mid Y (mil);Rotation;Layer\nR1;R_0603_A;1000;500;90;TopLayer'),
    );
    expect(guess.mapping).toEqual({ columns: { ref: 0, package: 1, x: 2, y: 3, rotation: 4, side: 5 }, headerRows: 2, unit: 'mil' });
    expect(guess.missing).toEqual([]);
  });

  it('are known by what stands in them where no name helps', () => {
    const guess = guessColumns(cellsOf('U1;33.5mm;12.0mm;270;B;x\nC12;4.5mm;8mm;0;T;y'));
    expect(guess.mapping.columns).toEqual({ ref: 0, side: 4, x: 1, y: 2, rotation: 3 });
    expect(guess.told).toEqual({ ref: 'content', side: 'content', x: 'content', y: 'content', rotation: 'content' });
    expect(guess.mapping.headerRows).toBe(0);
  });

  it('are missed where there are none', () => {
    expect(guessColumns(cellsOf('Ref;Value\nR1;10k\nR2;2k')).missing).toEqual(['x', 'y']);
  });
});

describe('a foreign table of places', () => {
  it('becomes a placement in mm, with known packages and a block for each part', () => {
    const { rows, unread } = mapped(
      'Ref;PosX (inch);PosY (inch);Rot;Side;Package;Value\nU3;1;0,5;90;top;SOT235;ob8\nC2;0.1;0.2;;bottom;C0603;1u',
    );
    expect(rows).toEqual([
      'ref,x,y,rotation,side,value,package,block,nets',
      'U3,25.4,12.7,90,front,ob8,SOT-23-5,processor,',
      'C2,2.54,5.08,0,back,1u,0603,board,',
    ]);
    expect(unread).toEqual([]);
  });

  it('is turned over where the back was counted as one looks at it', () => {
    expect(mapped('Ref;X;Y;Rot;Side\nC2;10;5;30;bottom', { backIsMirrored: true }).rows[1]).toBe('C2,60,5,150,back,,,board,');
  });

  it('tells every cell that holds no number, and goes on', () => {
    const { rows, unread } = mapped('Ref;X;Y\nC2;here;5\nC3;1;2');
    expect(unread).toEqual([{ line: 2, field: 'x', text: 'here' }]);
    expect(rows[2]).toBe('C3,1,2,0,front,,,board,');
  });
});
