import { expect, it } from 'vitest';
import { mismatches, netsOf, type LaidPart } from '../../core/netting/index.ts';
import { contradictionWords, mismatchList, mistakeWords } from './check-words.ts';

const NONE = { netlist: null, placement: null, picture: null, measured: [], apart: [] };
const laid = (ref: string, more: Partial<LaidPart> = {}): LaidPart => ({
  ref,
  side: 'front',
  xMm: 1,
  yMm: 1,
  value: null,
  nodes: [],
  isBare: false,
  ...more,
});

it('says of a contradiction which measurements may be wrong', () => {
  const joins = [
    { pins: ['C1.1', 'R1.1'], joined: true },
    { pins: ['R1.1', 'L1.2'], joined: true },
  ];
  const { contradictions } = netsOf(joins, [
    { pin: 'C1.1', name: 'battery' },
    { pin: 'L1.2', name: '5 V' },
  ]);
  expect(contradictionWords(contradictions[0]!, (join) => joins[join]!.pins.join(' and '))).toEqual({
    text: 'VBAT at C1.1 and V50 at L1.2 are joined: two supplies on one net.',
    next: 'Measure these again, one of them is wrong: C1.1 and R1.1, R1.1 and L1.2. Or one of the names is.',
  });
});

it('says each mismatch with its ways to mend it', () => {
  const found = mismatches({
    ...NONE,
    netlist: [{ ref: 'R1', letter: 'R', value: 4700, nodes: [] }],
    picture: [laid('R1', { value: 47e3 }), laid('R2')],
  });
  expect(mismatchList(found)).toEqual([
    { text: 'R2 is in the picture and not in the netlist.', mends: ['Add R2 to the netlist', 'Take R2 out of the picture'] },
    {
      text: 'R1 is 4.7 k in the netlist and 47 k as marked.',
      mends: ['Write 47 k for R1 in the netlist', 'Write 4.7 k for R1 in the picture'],
    },
  ]);
});

it('says many parts that one place lacks in one line', () => {
  const netlist = Array.from({ length: 12 }, (_, i) => ({ ref: `R${i + 1}`, letter: 'R', value: null, nodes: [] }));
  expect(mismatchList(mismatches({ ...NONE, netlist, picture: [] }))).toEqual([
    {
      text: '12 parts are in the netlist and not in the picture: R1, R2, R3, R4, R5, R6, R7, R8 and 4 more.',
      mends: ['Add them to the picture'],
    },
  ]);
});

it('says a likely mistake with what to look at', () => {
  expect(mistakeWords({ is: 'wrong-value', ref: 'r12', part: 'R12', by: 0.1 })).toEqual({
    text: 'The value of R12 may be about 1/10 of that which is drawn.',
    next: 'Read the mark of R12 again.',
  });
  expect(mistakeWords({ is: 'missing-part', nodes: ['rst', '0'], ohm: 1000 }).text).toBe(
    'Something of about 1 kΩ between RST and ground may not be drawn.',
  );
  expect(mistakeWords({ is: 'swapped-pins', ref: 'u3', nodes: ['a', 'b'] }).next).toBe('Measure from U3 to A and to B.');
});
