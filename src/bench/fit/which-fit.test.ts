import { describe, expect, it } from 'vitest';
import { PLAIN_PAD, UNKNOWN, type Pad, type Pattern } from '../../core/fit/index.ts';
import { LandPattern } from '../events/index.ts';
import type { Bag } from '../state.ts';
import { FitView } from '../views/index.ts';
import { answerFit, NOT_TOLD, patternOf, recordOf, withTold } from './index.ts';

const row = (pitchMm: number, more: Partial<Pattern> = {}): Pattern => ({
  ...UNKNOWN,
  name: `row of ${pitchMm}`,
  kind: 'connector',
  basis: 'lands',
  numbered: true,
  pads: [0, 1, 2].map((i): Pad => ({ ...PLAIN_PAD, name: String(i + 1), xMm: i * pitchMm, yMm: 0, wMm: 0.5, hMm: 1.2 })),
  ...more,
});
const record = (pattern: Pattern): LandPattern => LandPattern.parse(recordOf(pattern));
const linesOf = (text: string) => text.split('\n').map((line, i) => ({ line: i + 1, cells: line.split(',') }));
const bag = (id: string, count: number, pattern: LandPattern | null): [string, Bag] => [
  id,
  { id, part: id, name: `bag ${id}`, place: '', count, layers: [], pattern, demo: false },
];

describe('a pattern as it is kept', () => {
  it('comes back as it was, with nets, holes and outlines', () => {
    const pegs: Pad[] = [
      {
        ...PLAIN_PAD,
        name: '',
        kind: 'peg',
        shape: 'circle',
        xMm: 3,
        yMm: 1,
        wMm: 1,
        hMm: 1,
        drill: { wMm: 1, hMm: 0.8, dxMm: 0, dyMm: 0.1 },
      },
      {
        ...PLAIN_PAD,
        name: 'S',
        shape: 'outline',
        xMm: 5,
        yMm: 1,
        wMm: 1,
        hMm: 1,
        rings: [
          [
            [0, 0],
            [1, 0],
            [0, 1],
          ],
        ],
        side: 'back',
      },
    ];
    const full = row(0.8, {
      pads: [...row(0.8).pads, ...pegs],
      nets: { 1: 'GND' },
      heightMm: 2,
      mouth: { facesDeg: 90, reachMm: null },
      contacts: 'both',
    });
    expect(patternOf(record(full))).toEqual(full);
  });

  it('has names for pads that were sent without, unless it is numbered: then they are copper of no pin', () => {
    const pad = { x_mm: 0, y_mm: 0, w_mm: 1, h_mm: 1 };
    const names = (numbered: boolean): string[] =>
      patternOf(LandPattern.parse({ name: 'x', numbered, pads: [pad, { ...pad, pin: '7' }, { ...pad, kind: 'peg' }] })).pads.map(
        ({ name }) => name,
      );
    expect([names(false), names(true)]).toEqual([
      ['#1', '7', ''],
      ['', '7', ''],
    ]);
  });
});

describe('which of all these fit', () => {
  const question = {
    place: record(row(0.8)),
    parts: [record(row(1))],
    drawer: true,
    list: 'part,pin,x_mm,y_mm,w_mm,h_mm\nsame,1,0,0,0.5,1.2\nsame,2,0.8,0,0.5,1.2\nsame,3,1.6,0,0.5,1.2\nbad,1,x,0,1,1',
  };
  const bags = new Map([bag('full', 4, record(row(0.8))), bag('empty', 0, record(row(0.8))), bag('unknown', 2, null)]);
  const answer = answerFit(question, { bags, linesOf });

  it('has the parts at hand, those of the drawer and those of the list, the best first', () => {
    expect(FitView.parse(answer)).toEqual(answer);
    expect(answer.fits.map(({ name, from, count, answer: said }) => [name, from, count, said])).toEqual([
      ['bag full', 'drawer', 4, 'fits'],
      ['same', 'list', null, 'fits'],
      ['row of 1', 'given', null, 'does-not-line-up'],
    ]);
    expect(answer.fits[2]!.reasons).toEqual([{ code: 'other-pitch', sentence: 'The part has its pins 1 mm apart, the place 0.8 mm.' }]);
    expect(answer.fits[0]!.picture).toContain('aria-label="bag full over row of 0.8: It fits."');
  });

  it('names the bags that nothing can be said of, and the lines that are left out', () => {
    expect(answer.without_terminals).toEqual([{ bag_id: 'unknown', name: 'bag unknown' }]);
    expect(answer.problems).toMatchObject([{ line: 5, sentence: expect.stringMatching(/^Line 5, x_mm "x" is not a number\. /) }]);
  });

  it('says when it was stopped before all were tried', () => {
    let left = 1;
    const stopped = answerFit(question, { bags, linesOf, shouldStop: () => left-- === 0 });
    expect([stopped.done, stopped.fits.length]).toEqual([false, 1]);
  });
});

describe('what pads do not say, once it is told', () => {
  it('changes the answer', () => {
    const ask = (part: Pattern, place: Pattern) =>
      answerFit({ place: record(place), parts: [record(part)], drawer: false, list: '' }, { bags: new Map(), linesOf }).fits[0]!;
    const [part, place] = [row(0.8), row(0.8)];
    expect(ask(part, place)).toMatchObject({
      answer: 'fits',
      asks: [
        { code: 'height', of: 'both' },
        { code: 'mouth', of: 'both' },
      ],
    });
    const high = withTold(part, { ...NOT_TOLD, heightMm: 3, facesDeg: 90 });
    const low = withTold(place, { ...NOT_TOLD, heightMm: 2.5, facesDeg: 90 });
    expect(ask(high, low)).toMatchObject({
      answer: 'does-not-line-up',
      reasons: [{ sentence: 'It is 0.5 mm too high for the room there.' }],
    });
    const socket = withTold(part, { ...NOT_TOLD, kind: 'ribbon-socket', contacts: 'top' });
    expect(ask(socket, place).answer).toBe('cannot-say');
    expect(ask(socket, withTold(place, { ...NOT_TOLD, contacts: 'bottom' })).answer).toBe('does-not-line-up');
  });

  it('leaves what the pattern says itself where nothing is told', () => {
    const known = row(0.8, { heightMm: 2, mouth: { facesDeg: 90, reachMm: 1 }, contacts: 'top' });
    expect(withTold(known, NOT_TOLD)).toEqual(known);
    expect(withTold(known, { ...NOT_TOLD, facesDeg: 0 }).mouth).toEqual({ facesDeg: 0, reachMm: 1 });
  });
});
