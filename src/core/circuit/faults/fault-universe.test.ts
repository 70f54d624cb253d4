import { describe, expect, it } from 'vitest';
import {
  applyFaults,
  asWritten,
  CircuitError,
  compileCircuit,
  componentsOf,
  FAULT_RATES,
  faultUniverse,
  operatingPoint,
  readNetlist,
  type CircuitFault,
  type Netlist,
  type Pad,
} from '../index.ts';

function read(text: string): Netlist {
  const result = readNetlist(`t\n${text}`);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.netlist;
}

/** Voltage of a node with faults in. */
function volts(netlist: Netlist, faults: readonly CircuitFault[], node: string): number {
  const faulted = applyFaults(netlist, asWritten(netlist), faults);
  const circuit = compileCircuit(faulted.netlist);
  const solution = operatingPoint(circuit, faulted.conditions);
  if (!solution.ok) throw new Error(solution.code);
  return solution.x[circuit.nodeIndex.get(node)!]!;
}

const BOARD = `V1 plug 0 5
RJ1_1 plug vin 0.05
RJ1_2 gndin 0 0.05
RFB1 vin v5 0.1
RR1 v5 a 10k
RR2 a 0 10k
CC1 a 0 1u
DD1 a b DS
RR3 b 0 10k
XU1 v5 v33 0 v5 LINREG vset=3.3
XU2 v33 0 b CHIP
QQ1 c a 0 QN
RR4 v5 c 1k
RSW1 v5 key 20meg
RR5 key 0 100k
RF1 v5 fused 0.1
RR6 fused 0 1k
.subckt CHIP vdd gnd io
XL vdd gnd LOAD i=10m
D1 io vdd DS
D2 gnd io DS
.ends
.model DS D(IS=1e-12)
.model QN NPN(IS=1e-14 BF=100)`;
const netlist = read(BOARD);
const all = faultUniverse(netlist, undefined, { outside: ['v1'] });
const fault = (id: string, from = all): CircuitFault => {
  const found = from.find((one) => one.id === id);
  if (!found) throw new Error(`no fault ${id} among ${from.map((one) => one.id).join(' ')}`);
  return found;
};
const at = (id: string, node: string): number => volts(netlist, [fault(id)], node);

describe('the components of a netlist', () => {
  it('are named without the letter that the notation demands, with the contacts and inner parts of one thing together', () => {
    const components = componentsOf(netlist);
    expect(components.map(({ ref, role }) => `${ref} ${role}`)).toEqual([
      'v1 source',
      'j1 contact',
      'fb1 bead',
      'r1 resistor',
      'r2 resistor',
      'c1 capacitor',
      'd1 diode',
      'r3 resistor',
      'u1 regulator',
      'u2 chip',
      'q1 transistor',
      'r4 resistor',
      'sw1 key',
      'r5 resistor',
      'f1 fuse',
      'r6 resistor',
    ]);
    expect(components.find(({ ref }) => ref === 'u2')!.nets).toEqual(['v33', '0', 'b']);
  });

  it('are what their parts are where all are alike, and a battery is one with its sensor', () => {
    const text =
      'DBL1_1 a b DS\nDBL1_2 b 0 DS\nXBT1 a 0 BATTERY v=3\nRBT1_T a 0 10k\nRS1 a c 50m\nRRV1_1 c d 5k\nRRV1_2 d 0 5k\n.model DS D(IS=1e-12)';
    const lamps = read(text);
    expect(componentsOf(lamps).map(({ ref, role }) => `${ref} ${role}`)).toEqual(['bl1 diode', 'bt1 battery', 's1 contact', 'rv1 contact']);
    const ids = faultUniverse(lamps).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['bl1_1:open', 'bl1_2:open', 'rv1_2:dirty-contact', 's1:open']));
    const flat = faultUniverse(lamps).find(({ id }) => id === 'bt1:drifted-down')!;
    expect(flat.changes).toEqual([{ does: 'scale', part: 'xbt1', by: 0.75 }]);
  });

  it('may be told what they are', () => {
    expect(componentsOf(netlist, (ref) => (ref === 'r6' ? 'speaker' : undefined)).find(({ ref }) => ref === 'r6')!.role).toBe('speaker');
  });
});

describe('the fault universe', () => {
  it('has unique ids, rates between 0 and 1, and nothing of what is outside', () => {
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const one of all) {
      expect(one.rate).toBeGreaterThan(0);
      expect(one.rate).toBeLessThan(0.2);
      expect(one.components).not.toContain('v1');
    }
  });

  it('applies every fault, and parts and nodes that were there keep their places', () => {
    for (const one of all) {
      const { netlist: edited, conditions, liftedFrom } = applyFaults(netlist, asWritten(netlist), [one]);
      expect(edited.parts.slice(0, netlist.parts.length).map(({ name }) => name)).toEqual(netlist.parts.map(({ name }) => name));
      expect(edited.nodes).toEqual([...netlist.nodes, ...edited.nodes.slice(netlist.nodes.length)]);
      expect(edited.nodes.length - netlist.nodes.length).toBe(liftedFrom.length);
      const changed =
        edited !== netlist ||
        [...conditions.scale].some((s) => s !== 1) ||
        [...conditions.removed, ...conditions.bridge].some((v) => v !== 0);
      expect(changed).toBe(true);
    }
  });

  it('takes rates from the table, and learned ones before it, times what the place makes of them', () => {
    expect(fault('r1:open').rate).toBe(FAULT_RATES.resistor.open);
    const learned = faultUniverse(netlist, undefined, {
      rateOf: (role, kind) => (role === 'fuse' && kind === 'open' ? 0.3 : undefined),
      multiplierOf: (ref) => (ref === 'f1' ? 2 : 1),
      blockOf: (ref) => (ref === 'f1' ? 'power' : undefined),
    });
    expect(fault('f1:open', learned)).toMatchObject({ rate: 0.6, block: 'power' });
    expect(fault('r1:open', learned).block).toBeUndefined();
  });

  it('knows faults of a netlist only, and says so for another', () => {
    expect(() => applyFaults(read('R1 a 0 1'), asWritten(read('R1 a 0 1')), [fault('r2:open')])).toThrow(CircuitError);
  });
});

describe('what a fault does to the circuit', () => {
  const healthy = (node: string): number => volts(netlist, [], node);

  it.each([
    ['fb1:open', 'v5', 0],
    ['f1:open', 'fused', 0],
    ['c1:short', 'a', 0],
    ['q1:dead', 'c', 5],
    ['q1_control:short', 'c', 5],
    ['u1:dead', 'v33', 0],
    ['u1_out:supply-shorted', 'v33', 0.45],
    ['u1@v33:open-joint', 'v33', 0],
    ['u1:drifted-up', 'v33', 3.96],
    ['u2:supply-shorted', 'v33', 0.45],
    ['j1_1:open', 'v5', 0],
    ['sw1:short', 'key', 5],
  ])('%s brings %s to %d V', (id, node, expected) => {
    expect(Math.abs(at(id, node) - expected)).toBeLessThan(0.25);
    expect(Math.abs(healthy(node) - expected)).toBeGreaterThan(0.3);
  });

  it('an open joint at the ground of a regulator is not the same as a dead one', () => {
    expect(at('u1@0:open-joint', 'v33')).toBeGreaterThan(at('u1:dead', 'v33') + 0.5);
  });

  it('a reversed diode no longer lets the current through', () => {
    const one = read('V1 p 0 5\nRR1 p a 1k\nDD1 a b DS\nRR2 b 0 1k\n.model DS D(IS=1e-12)');
    expect(volts(one, [], 'b')).toBeGreaterThan(2);
    expect(volts(one, [fault('d1:reversed', faultUniverse(one))], 'b')).toBeLessThan(0.01);
  });

  it('a dirty contact drops more than a clean one', () => {
    expect(healthy('v5') - at('j1_1:dirty-contact', 'v5')).toBeGreaterThan(0.1);
  });

  it('two faults at once are both there', () => {
    const both = [fault('f1:open'), fault('c1:short')];
    expect(volts(netlist, both, 'fused')).toBeCloseTo(0, 3);
    expect(volts(netlist, both, 'a')).toBeLessThan(0.01);
  });
});

describe('faults between neighbours', () => {
  const pad = (component: string, pin: string, net: string, xMm: number, more: Partial<Pad> = {}): Pad => ({
    component,
    pin,
    net,
    side: 'front',
    xMm,
    yMm: 0,
    widthMm: 0.4,
    heightMm: 0.4,
    ...more,
  });
  const pads = [
    pad('U2', '1', 'V33', 0),
    pad('U2', '2', '0', 0.7),
    pad('U2', '3', 'b', 1.4),
    pad('U2', '4', '0', 2.1),
    pad('R1', '1', 'a', 2.1, { side: 'back' }),
    pad('R4', '1', 'c', 3.6),
  ];
  const placed = faultUniverse(
    netlist,
    { pads },
    {
      liquid: [
        {
          id: 'stain',
          side: 'front',
          polygon: [
            [1, -1],
            [4, -1],
            [4, 1],
            [1, 1],
          ],
        },
      ],
    },
  );
  const ids = (kind: string): string[] => placed.filter((one) => one.kind === kind).map(({ id }) => id);

  it('are bridges where the gap is small and the side is the same', () => {
    expect(ids('bridge')).toEqual(['0~v33:bridge', '0~b:bridge']);
  });

  it('count the rate once for each pair of pads', () => {
    expect(fault('0~b:bridge', placed).rate).toBeCloseTo(2 * fault('0~v33:bridge', placed).rate, 12);
  });

  it('join the two nets', () => {
    expect(Math.abs(volts(netlist, [fault('0~v33:bridge', placed)], 'v33'))).toBeLessThan(0.1);
  });

  it('are leaks inside the region that was drawn, on its side', () => {
    expect(ids('liquid-leak')).toEqual(['stain:0~b:liquid-leak', 'stain:0~c:liquid-leak']);
  });

  it('are open joints of pins that are alone at their net', () => {
    expect(ids('open-joint').filter((id) => id.startsWith('u2'))).toEqual(['u2.1:open-joint', 'u2.3:open-joint']);
  });
});
