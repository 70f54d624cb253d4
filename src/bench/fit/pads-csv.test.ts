import { describe, expect, it } from 'vitest';
import { fitPart } from '../../core/fit/index.ts';
import { askSentence, fitSentence, patternFromCsv, reasonSentence } from './index.ts';

const about = { name: 'a place', kind: 'connector', basis: 'lands' } as const;
const read = (text: string) =>
  patternFromCsv(
    text.split('\n').map((line, i) => ({ line: i + 1, cells: line.split(',') })),
    about,
  );

describe('a table of pads', () => {
  it('becomes a pattern', () => {
    const { pattern, problems } = read(
      'pin,x_mm,y_mm,w_mm,h_mm,kind,shape,drill_w_mm,net\n1,0,0,0.5,1.2,,,,GND\n2,0.8,0,0.5,1.2,through,oval,0.4,\n,2,1,0.9,0.9,peg,circle,,',
    );
    expect(problems).toEqual([]);
    expect(pattern).toMatchObject({ numbered: true, nets: { 1: 'GND' }, basis: 'lands' });
    expect(pattern!.pads.map(({ name, kind, drill }) => [name, kind, drill && drill.wMm])).toEqual([
      ['1', 'surface', null],
      ['2', 'through', 0.4],
      ['', 'peg', 0.9],
    ]);
  });

  it('is not taken for numbered when a pad has no pin', () => {
    expect(read('pin,x_mm,y_mm,w_mm,h_mm\n1,0,0,1,1\n,2,0,1,1').pattern!.numbered).toBe(false);
  });

  it.each([
    ['pin,x_mm,y_mm,w_mm\n1,0,0,1', 1, 'header'],
    ['pin,x_mm,y_mm,w_mm,h_mm\n1,0,0,1,wide', 2, 'h_mm'],
    ['pin,x_mm,y_mm,w_mm,h_mm\n1,0,0,0,1', 2, 'w_mm'],
    ['pin,x_mm,y_mm,w_mm,h_mm,kind\n1,0,0,1,1,glued', 2, 'kind'],
    ['pin,x_mm,y_mm,w_mm,h_mm,kind\n1,0,0,1,1,through', 2, 'drill_w_mm'],
  ])('%j is refused at line %i, %s', (text, line, field) => {
    expect(read(text)).toMatchObject({ pattern: null, problems: [{ line, field }] });
  });
});

it('answers are told in sentences, with what to do next', () => {
  const two = (pitch: number) => read(`pin,x_mm,y_mm,w_mm,h_mm\n1,0,0,0.5,1\n2,${pitch},0,0.5,1`).pattern!;
  const no = fitPart(two(2), two(2.5));
  expect([fitSentence(no), ...no.reasons.map(reasonSentence)]).toEqual([
    'It does not line up.',
    'The part has its pins 2 mm apart, the place 2.5 mm.',
  ]);
  const yes = fitPart(two(2), two(2));
  expect(fitSentence(yes)).toBe('It fits.');
  expect(yes.asks.map(askSentence)).toEqual(['Still to check: the height of both.', 'Still to check: which way the mouth faces, of both.']);
});
