import { describe, expect, it } from 'vitest';
import { measured, register, type MarkPair } from '../../core/vision/index.ts';
import { distanceMarks, knownMarks, layingSaid, layingTrouble, lengthWords, measuredNote } from './index.ts';

const BOARD = { width_mm: 70, height_mm: 55 };
const PARTS = [
  { ref: 'U10', side: 'front', x: 30, y: 20 },
  { ref: 'U2', side: 'front', x: 50, y: 30 },
  { ref: 'R1', side: 'back', x: 10, y: 10 },
] as const;

describe('laying a photo on a board', () => {
  it('knows the corners as a side is seen, and the parts of that side in the order of their numbers', () => {
    const front = knownMarks(BOARD, PARTS, 'front');
    expect(front.map(({ name }) => name).slice(3)).toEqual(['Corner upper left', 'Middle of U2', 'Middle of U10']);
    expect(front[0]).toMatchObject({ name: 'Corner lower left', boardMm: [0, 0] });
    expect(knownMarks(BOARD, PARTS, 'back')[0]).toMatchObject({ name: 'Corner lower left', boardMm: [70, 0] });
    expect(knownMarks(undefined, [], 'front')).toEqual([]);
  });

  it('says how a photo lies, what was measured on it and how sure that is', () => {
    const [a, b] = distanceMarks(40);
    const place = register(
      [
        { ...a!, photoPx: [100, 500] },
        { ...b!, photoPx: [900, 500] },
      ],
      'front',
    );
    if (!place.ok) throw new Error(place.code);
    expect(layingSaid(place)).toBe('By 2 marks 20.0 px are a millimetre, taken as seen from straight above; one more mark would check it.');
    const found = measured(place, [200, 400], [260, 320]);
    expect(lengthWords(found.apart)).toBe('5.0 ± 0.1 mm');
    expect(measuredNote(found, 'Pitch of J1 ')).toBe(
      'Pitch of J1, measured on a photo: 5.0 ± 0.1 mm, across 3.0 ± 0.1 mm, down 4.0 ± 0.1 mm, from (5.0, 5.0) to (8.0, 9.0) mm of the board.',
    );
  });

  it('gives each refusal a sentence that ends with what to do, with the marks by name', () => {
    const mark = (name: string, x: number, y: number, px: readonly [number, number]): MarkPair => ({ name, boardMm: [x, y], photoPx: px });
    const corners = [mark('A', 0, 0, [0, 500]), mark('B', 60, 0, [600, 500]), mark('C', 60, 50, [600, 0]), mark('D', 0, 50, [0, 0])];
    const said = (marks: readonly MarkPair[], side: 'front' | 'back' = 'front'): string => {
      const place = register(marks, side);
      return place.ok ? layingSaid(place) : layingTrouble(place);
    };
    expect(said(corners)).toMatch(/^By 4 marks 10\.0 px/);
    expect(said(corners.slice(0, 1))).toMatch(/two places/);
    expect(said([corners[0]!, { ...corners[0]!, name: 'E' }])).toMatch(/^A and E lie on one place/);
    expect(said(corners, 'back')).toMatch(/Choose the other side/);
    expect(said([...corners, mark('E', 30, 10, [300, 300]), mark('F', 30, 40, [300, 100])])).toMatch(/^E lies .* take it away\.$/);
  });
});
