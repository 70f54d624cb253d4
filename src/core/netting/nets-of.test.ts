import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assertNets } from './assert-nets.ts';
import { readNetName } from './net-names.ts';
import { netsOf, type Nets, type PinNamed, type PinsJoined } from './nets-of.ts';

const joined = (...pins: string[]): PinsJoined => ({ pins, joined: true });
const apart = (...pins: string[]): PinsJoined => ({ pins, joined: false });
const pinsOf = ({ nets }: Nets): string[] => nets.map(({ node, pins }) => `${node}: ${pins.join(' ')}`);

describe('nets from continuity', () => {
  it('grow with each pair that is joined, and a net without a name is called after its first pin', () => {
    const nets = netsOf([joined('U1.10', 'C4.1'), joined('R2.1', 'R3.2'), joined('C4.1', 'U1.9')]);
    expect(pinsOf(nets)).toEqual(['n_c4_1: C4.1 U1.9 U1.10', 'n_r2_1: R2.1 R3.2']);
    expect(nets.contradictions).toEqual([]);
  });

  it('take a name wherever it was given, and two places of one name are one net', () => {
    const names = [
      { pin: 'C4.1', name: '3.3 V' },
      { pin: 'C9.1', name: '+3V3' },
      { pin: 'J1.2', name: 'Ground' },
    ];
    expect(pinsOf(netsOf([joined('U1.1', 'C4.1')], names))).toEqual(['v33: C4.1 C9.1 U1.1', '0: J1.2']);
  });

  it('go by the last measurement of the same two pins', () => {
    expect(netsOf([joined('A1.1', 'A2.1'), apart('A2.1', 'A1.1')]).nets).toHaveLength(2);
    expect(netsOf([apart('A1.1', 'A2.1'), joined('A2.1', 'A1.1')]).contradictions).toEqual([]);
  });

  it('say by which chain two pins are joined that were measured as not joined', () => {
    const nets = netsOf([joined('A1.1', 'A2.1'), joined('A2.1', 'A3.1'), apart('A1.1', 'A3.1')]);
    expect(nets.contradictions).toEqual([
      { code: 'measured-apart', pins: ['A1.1', 'A3.1'], node: 'n_a1_1', apart: 2, through: [{ join: 0 }, { join: 1 }] },
    ]);
  });

  it('question two supplies that are joined, and the shortest chain between them', () => {
    const names = [
      { pin: 'C1.1', name: 'battery' },
      { pin: 'C2.1', name: '5 V' },
    ];
    const nets = netsOf([joined('C1.1', 'R1.1'), joined('R1.1', 'L1.2'), joined('L1.2', 'C2.1'), joined('R1.1', 'C2.1')], names);
    expect(nets.contradictions).toEqual([
      { code: 'supplies-joined', pins: ['C1.1', 'C2.1'], node: 'vbat', names: ['vbat', 'v50'], through: [{ join: 0 }, { join: 3 }] },
    ]);
  });

  it('question a second name of a signal more mildly', () => {
    const names = [
      { pin: 'R1.1', name: 'clk' },
      { pin: 'R2.1', name: 'reset' },
    ];
    expect(netsOf([joined('R1.1', 'R2.1')], names).contradictions[0]?.code).toBe('two-names');
  });

  it('keep their law whatever is measured and named', () => {
    const pin = fc.constantFrom('U1.1', 'U1.2', 'U1.10', 'C1.1', 'C1.2', 'R1.1', 'R1.2');
    const join = fc.record({ pins: fc.array(pin, { minLength: 2, maxLength: 4 }), joined: fc.boolean() });
    const name = fc.record({ pin, name: fc.constantFrom('gnd', '3.3 V', 'battery', 'clk', 'n_c1_1', '  ') });
    fc.assert(
      fc.property(fc.array(join, { maxLength: 12 }), fc.array(name, { maxLength: 4 }), (joins: PinsJoined[], names: PinNamed[]) =>
        assertNets(netsOf(joins, names), joins, names),
      ),
    );
  });

  it('are refused by their law where a pin went to another net', () => {
    const joins = [joined('A1.1', 'A2.1')];
    const good = netsOf(joins);
    const torn = { ...good, nets: [{ ...good.nets[0]!, pins: ['A1.1'] }], nodeOf: new Map([['A1.1', 'n_a1_1']]) };
    expect(() => assertNets(torn, joins)).toThrow('measured as joined');
  });
});

it('reads what a person calls a net', () => {
  const read = (text: string) => readNetName(text)?.node;
  expect(['Ground', '0', 'Battery', 'cell', '3.3 V', '3V3', '+5v', '12 V', '1,8V'].map(read)).toEqual([
    '0',
    '0',
    'vbat',
    'vbat',
    'v33',
    'v33',
    'v50',
    'v120',
    'v18',
  ]);
  expect(['Key A', 'RST#', 'VLED', '-', ''].map(read)).toEqual(['key_a', 'rst#', 'vled', undefined, undefined]);
  expect([readNetName('v33')?.volt, readNetName('VLED')?.kind, readNetName('clk')?.kind]).toEqual([3.3, 'supply', 'signal']);
});
