import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readKicadMod } from './read-kicad-mod.ts';

const OLDER = `(module SOCKET-2 (layer F.Cu) (tedit 0)
  (descr "a socket, say \\"two\\" pins")
  (fp_line (start 0 0) (end 1 1) (layer F.SilkS) (width 0.12))
  (pad 1 smd roundrect (at -1 -2) (size 0.6 1.2) (layers F.Cu F.Paste F.Mask) (roundrect_rratio 0.25))
  (pad 2 thru_hole oval (at 1 2 90) (size 2 1) (drill oval 1.4 0.6 (offset 0.1 0)) (layers *.Cu *.Mask))
  (pad "" np_thru_hole circle (at 3 0) (size 0.9 0.9) (drill 0.9) (layers *.Cu *.Mask))
  (pad "" smd rect (at 9 9) (size 1 1) (layers F.Paste)))`;
const NEWER = OLDER.replace(
  '(module SOCKET-2 (layer F.Cu) (tedit 0)',
  '(footprint "SOCKET-2" (version 20211014) (generator x)\n  (layer "F.Cu")',
).replace('(pad 1', '(pad "1"');

const patternIn = (text: string) => {
  const read = readKicadMod(text);
  if (!read.ok) throw new Error(`${read.line}:${read.column} ${read.message}`);
  return read.pattern;
};

describe('a land pattern from a file', () => {
  it('is the same from the older form and the newer', () => {
    expect(patternIn(NEWER)).toEqual(patternIn(OLDER));
  });

  it('tells the nets of pins that were taken out of a board', () => {
    const text = OLDER.replace('(roundrect_rratio 0.25)', '(roundrect_rratio 0.25) (net 4 "GND")').replace(
      '(layers *.Cu *.Mask))',
      '(layers *.Cu *.Mask) (net "VBUS"))',
    );
    expect(patternIn(text).nets).toEqual({ 1: 'GND', 2: 'VBUS' });
    expect(patternIn(OLDER).nets).toEqual({});
  });

  it('has y up, slots turned as stored, holes where copper is off, pegs, and no pads that only print paste', () => {
    const { name, kind, pads } = patternIn(OLDER);
    expect([name, kind, pads.length]).toEqual(['SOCKET-2', 'connector', 3]);
    expect(pads[0]).toMatchObject({
      name: '1',
      kind: 'surface',
      shape: 'round-rect',
      xMm: -1,
      yMm: 2,
      wMm: 0.6,
      hMm: 1.2,
      cornerMm: 0.15,
      drill: null,
    });
    expect(pads[1]).toMatchObject({ kind: 'through', turnDeg: 90, drill: { wMm: 1.4, hMm: 0.6, dxMm: -0.1, dyMm: 0 } });
    expect(pads[1]!.xMm).toBeCloseTo(1, 9);
    expect(pads[1]!.yMm).toBeCloseTo(-1.9, 9);
    expect(pads[2]).toMatchObject({ name: '', kind: 'peg', drill: { wMm: 0.9, hMm: 0.9 } });
  });

  it('takes copper of any outline', () => {
    const custom = `(footprint "X" (pad "1" smd custom (at 0 0) (size 1 1) (layers "F.Cu") (options (clearance outline) (anchor rect))
      (primitives (gr_poly (pts (xy 0 0) (xy 2 0) (xy 2 -1) (xy 0 -1)) (width 0)))))`;
    const [pad] = patternIn(custom).pads;
    expect(pad!.shape).toBe('outline');
    expect(pad!.rings).toHaveLength(2);
    expect(pad!.rings[1]).toContainEqual([2, 1]);
  });

  it.each([
    ['', 1, 1, 'there is no pattern in it'],
    ['(footprint "X"', 1, 1, 'never closed'],
    ['(footprint "X"))', 1, 16, 'more after the end'],
    ['(footprint "X', 1, 12, 'a quote is opened'],
    ['(board "X")', 1, 1, 'not with footprint or module'],
    ['(footprint "X"\n  (pad "1" smd heart (at 0 0) (size 1 1) (layers F.Cu)))', 2, 16, '"heart" is no shape'],
    ['(footprint "X"\n  (pad "1" smd rect (at 0 zero) (size 1 1) (layers F.Cu)))', 2, 21, '"at" has 1 numbers'],
    ['(footprint "X"\n (pad "1" smd rect (at 0 0) (size 0 1) (layers F.Cu)))', 2, 2, 'not above zero'],
    ['(footprint "X"\n (pad "1" smd rect (size 1 1) (layers F.Cu)))', 2, 2, 'has no "at"'],
  ])('%j is refused with line %i and column %i', (text, line, column, message) => {
    const read = readKicadMod(text);
    expect(read).toMatchObject({ line, column, message: expect.stringContaining(message) });
  });

  it('never fails on any text', () => {
    const pieces = fc.constantFrom('(', ')', '"', 'footprint', 'pad', 'smd', 'rect', '(at 0 0)', '(size 1 1)', ' ', '\n', '1', '\\');
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 60, unit: 'binary' }),
          fc.array(pieces, { maxLength: 40 }).map((all) => all.join(' ')),
        ),
        (text) => {
          expect([true, false]).toContain(readKicadMod(text).ok);
        },
      ),
    );
  });
});
