import { describe, expect, it } from 'vitest';
import { partsFromCsv } from './index.ts';

const read = (text: string) => partsFromCsv(text.split('\n').map((line, i) => ({ line: i + 1, cells: line.split(',') })));

describe('a list with a line a part', () => {
  const header = 'part,sides,pins,pitch_mm,span_min_mm,foot_min_mm,width_min_mm';

  it('becomes parts with feet as their drawings say', () => {
    const { parts, problems } = read(
      `${header},span_max_mm,height_mm,part_kind,supplier,price\nEight,2,8,1.27,5.8,0.6,0.4,6.2,1.75,gull-wing,Quay Components,0.35`,
    );
    expect(problems).toEqual([]);
    expect(parts).toMatchObject([{ name: 'Eight', supplier: 'Quay Components', price: '0.35' }]);
    const { pattern } = parts[0]!;
    expect(pattern).toMatchObject({ basis: 'feet', kind: 'gull-wing', heightMm: 1.75, mouth: null });
    expect(pattern.pads).toHaveLength(8);
    expect(Math.max(...pattern.pads.map(({ xMm, wMm }) => xMm + wMm / 2))).toBeCloseTo(3, 9);
  });

  it('tells where a part is plugged in and how it touches', () => {
    const { parts } = read(`${header},part_kind,mouth_deg,mouth_reach_mm,contacts\nSocket,1,6,0.5,2,0.8,0.3,ribbon-socket,270,1.4,Bottom`);
    expect(parts[0]!.pattern).toMatchObject({ mouth: { facesDeg: 270, reachMm: 1.4 }, contacts: 'bottom' });
  });

  it('has parts with legs and with pegs', () => {
    const { parts, problems } = read(
      'part,sides,pins,pitch_mm,span_min_mm,leg_mm,pegs,peg_mm,pegs_apart_mm,pegs_inward_mm\nJack,1,3,2,4,0.5,2,0.9,8,3\nRow,2,8,2.54,7.62,0.5,,,,\nThree,1,3,2,4,0.5,3,1,1,1\nNone,1,3,2,4,,,,,',
    );
    expect(parts.map(({ name, pattern }) => [name, pattern.kind, pattern.pads.map(({ kind }) => kind[0]).join('')])).toEqual([
      ['Jack', 'legs', 'tttpp'],
      ['Row', 'legs', 'tttttttt'],
    ]);
    expect(problems).toMatchObject([
      { line: 4, field: 'pegs' },
      { line: 5, field: 'part', message: expect.stringMatching(/above zero/) },
    ]);
  });

  it.each([
    ['odd,2,7,1,5,1,0.4', 'part', /7 pins do not share out over 2 sides/],
    ['three,3,6,1,5,1,0.4', 'sides', /none of 1, 2, 4/],
    ['flat,2,8,1,5,0,0.4', 'part', /above zero/],
    ['many,2,100000000,1,5,1,0.4', 'part', /do not share out/],
    [',2,8,1,5,1,0.4', 'part', /is empty/],
    ['x,2,8,1,wide,1,0.4', 'span_min_mm', /not a number/],
  ])('leaves out %s and says why', (line, field, message) => {
    const { parts, problems } = read(`${header}\ngood,2,8,1,5,1,0.4\n${line}`);
    expect(parts.map(({ name }) => name)).toEqual(['good']);
    expect(problems).toMatchObject([{ line: 3, field, message: expect.stringMatching(message) }]);
  });
});

describe('a list with a line a pad', () => {
  const header = 'part,pin,x_mm,y_mm,w_mm,h_mm,height_mm';

  it('becomes a part for each name, with what its first line tells', () => {
    const { parts } = read(`${header}\nA,1,0,0,1,1,2.5\nA,2,2,0,1,1,\nB,1,0,0,1,1,`);
    expect(parts.map(({ name, pattern }) => [name, pattern.pads.length, pattern.heightMm, pattern.basis])).toEqual([
      ['A', 2, 2.5, 'lands'],
      ['B', 1, null, 'lands'],
    ]);
  });

  it('leaves out a part of which a line is bad, and keeps the others', () => {
    const { parts, problems } = read(`${header}\nA,1,0,0,1,1,\nB,1,0,0,1,1,\nA,2,two,0,1,1,`);
    expect(parts.map(({ name }) => name)).toEqual(['B']);
    expect(problems).toMatchObject([{ line: 4, field: 'x_mm' }]);
  });
});

it('an empty list holds nothing', () => {
  expect(read('')).toEqual({ parts: [], problems: [] });
});
