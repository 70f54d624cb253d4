import { describe, expect, it } from 'vitest';
import { mismatches, type DrawnPart, type LaidPart, type Sources } from './mismatches.ts';

const drawn = (ref: string, more: Partial<DrawnPart> = {}): DrawnPart => ({ ref, letter: 'R', value: null, nodes: [], ...more });
const laid = (ref: string, more: Partial<LaidPart> = {}): LaidPart => ({
  ref,
  side: 'front',
  xMm: 10,
  yMm: 10,
  value: null,
  nodes: [],
  isBare: false,
  ...more,
});
const of = (sources: Partial<Sources>) =>
  mismatches({ netlist: null, placement: null, picture: null, measured: [], apart: [], ...sources });

describe('netlist, placement and picture', () => {
  it('agree where references, places, values and nets do', () => {
    const part = laid('R1', { value: 1000, nodes: ['a', 'b'] });
    const sources = { netlist: [drawn('r1', { value: 1020 })], placement: [part, laid('TP1', { isBare: true })] };
    expect(
      of({ ...sources, picture: [{ ...part, xMm: 10.9 }, laid('TP1', { isBare: true })], measured: [{ pins: ['R1.1', 'U9.1'] }] }),
    ).toEqual([]);
  });

  it('lack nothing in what the model does not have yet', () => {
    expect(of({ placement: [laid('R1')] })).toEqual([]);
    expect(of({ picture: [laid('R1')], netlist: null })).toEqual([]);
  });

  it('tell a reference that one of them lacks, with the ways to mend it', () => {
    expect(of({ netlist: [drawn('C4')], placement: [laid('R1')], picture: [laid('R1')] })).toEqual([
      {
        code: 'only-in',
        ref: 'C4',
        where: ['netlist'],
        notIn: 'placement',
        mends: [
          {
            does: 'add',
            to: 'placement',
            ref: 'C4',
          },
          {
            does: 'remove',
            from: 'netlist',
            ref: 'C4',
          },
        ],
      },
      expect.objectContaining({ code: 'only-in', ref: 'C4', notIn: 'picture' }),
      expect.objectContaining({ code: 'only-in', ref: 'R1', where: ['placement', 'picture'], notIn: 'netlist' }),
    ]);
  });

  it('propose another name first where just one like it is left over', () => {
    const [first] = of({ netlist: [drawn('U7')], placement: [laid('U1')] });
    expect(first?.mends[0]).toEqual({ does: 'rename', in: 'placement', ref: 'U1', to: 'U7' });
  });

  it('ask for no picture of what is off the board and no part of the netlist for a test point', () => {
    expect(of({ netlist: [drawn('BT1')], placement: [laid('BT1', { side: 'off' })], picture: [] })).toEqual([]);
    expect(of({ netlist: [], placement: [laid('TP3', { isBare: true })] })).toEqual([]);
  });

  it('tell another place, another side and another value', () => {
    expect(of({ placement: [laid('R1')], picture: [laid('R1', { xMm: 13, yMm: 14 })] })[0]).toMatchObject({
      code: 'place-differs',
      byMm: 5,
    });
    expect(of({ placement: [laid('R1')], picture: [laid('R1', { side: 'back' })] })[0]).toMatchObject({ sides: ['front', 'back'] });
    expect(of({ netlist: [drawn('R1', { value: 4700 })], picture: [laid('R1', { value: 47e3 })] })).toMatchObject([
      {
        code: 'value-differs',
        drawn: 4700,
        marked: 47e3,
        mends: [
          { in: 'netlist', value: 47e3 },
          { in: 'picture', value: 4700 },
        ],
      },
    ]);
  });

  it('tell a pin that was measured to be of another net than it is drawn in', () => {
    const placement = [laid('R1', { nodes: ['a', 'b'] }), laid('R2', { nodes: ['a', null] }), laid('R3', { nodes: ['c', 'b'] })];
    expect(of({ placement, measured: [{ pins: ['R1.1', 'R2.1', 'R3.1', 'R2.2'] }] })).toMatchObject([
      {
        code: 'net-differs',
        pin: 'R3.1',
        drawn: 'c',
        measured: 'a',
        as: 'R1.1',
        mends: [{ does: 'rewire', node: 'a' }, { does: 'measure' }],
      },
    ]);
  });

  it('tell pins that are drawn as joined and were measured as not', () => {
    const placement = [laid('R1', { nodes: ['a', 'b'] }), laid('R2', { nodes: ['a', 'c'] })];
    expect(
      of({
        placement,
        apart: [
          ['R1.1', 'R2.1'],
          ['R1.2', 'R2.2'],
        ],
      }),
    ).toEqual([{ code: 'drawn-as-joined', pins: ['R1.1', 'R2.1'], node: 'a', mends: [{ does: 'measure', pins: ['R1.1', 'R2.1'] }] }]);
  });
});
