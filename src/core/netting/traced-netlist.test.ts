import { describe, expect, it } from 'vitest';
import { asWritten, compileCircuit, measure, readNetlist } from '../circuit/index.ts';
import { tracedNetlist, type TracedPart } from './traced-netlist.ts';

const part = (ref: string, kind: string, nodes: TracedPart['nodes'], value: number | null = null): TracedPart => ({
  ref,
  kind,
  value,
  nodes,
});

/** A battery, its fuse, a regulator, a divider below it and a lamp with its resistor. */
const TRACED = [
  part('F1', 'fuse', ['vbat', 'vsys']),
  part('U1', 'chip', ['vsys', '0', 'vsys', null, 'v33']),
  part('R1', 'resistor', ['v33', 'r1_2'], 10_000),
  part('R2', 'resistor', ['r1_2', '0'], 10_000),
  part('D1', 'light', ['0', 'd1_2']),
  part('R3', 'resistor', ['v33', 'd1_2'], 470),
  part('C1', 'capacitor', ['v33', '0']),
];

function netlistOf(parts: readonly TracedPart[]) {
  const traced = tracedNetlist(parts, 3.9)!;
  const read = readNetlist(traced.text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { ...traced, netlist: read.netlist };
}

describe('what was marked and probed, as a netlist', () => {
  it('reads as a circuit in which the battery feeds the rail that a small chip makes', () => {
    const { netlist, left } = netlistOf(TRACED);
    expect(left).toEqual([]);
    expect(netlist.parts.map(({ name, kind }) => `${name} ${kind}`)).toEqual(
      ['xbt1 BATTERY', 'rf1 R', 'xu1 LINREG', 'r1 R', 'r2 R', 'd1 D', 'r3 R', 'c1 C'].map((each) =>
        expect.stringMatching(new RegExp(`^${each}$`, 'i')),
      ),
    );
    const power = { supplies: { [netlist.parts[0]!.name]: 3.9 } };
    const volts = (red: string): number => {
      const found = measure(compileCircuit(netlist), asWritten(netlist), { mode: 'volts', red, power });
      if (!found.ok) throw new Error(found.code);
      return found.value!;
    };
    expect(volts('v33')).toBeCloseTo(3.3, 1);
    // A divider of two alike.
    expect(volts('r1_2')).toBeCloseTo(volts('v33') / 2, 2);
    // (3.3 − 1.9) V over 470 Ω; a red light drops 1.6 to 2.2 V (common practice, no source).
    expect(volts('d1_2')).toBeGreaterThan(1.6);
    expect(volts('d1_2')).toBeLessThan(2.2);
  });

  it('raises the voltage where the net above is called so', () => {
    const { netlist } = netlistOf([part('U2', 'chip', ['vbat', '0', 'v50'])]);
    expect(netlist.parts.at(-1)).toMatchObject({ kind: 'BOOST', nodes: ['vbat', 'v50', '0', 'vbat'] });
  });

  it('takes the chip with the fewest pins for what makes a rail, and none with many', () => {
    const many = part('U3', 'chip', ['vbat', '0', 'v33', ...Array.from({ length: 9 }, () => null)]);
    expect(netlistOf([many]).left).toEqual([{ ref: 'U3', why: 'no-law' }]);
    const both = netlistOf([part('U4', 'chip', ['vbat', '0', 'v33', null]), part('U5', 'chip', ['vbat', '0', 'v33'])]);
    expect(both.left).toEqual([{ ref: 'U4', why: 'no-law' }]);
  });

  it('leaves out, and names, what it cannot know', () => {
    const { left } = netlistOf([
      ...TRACED,
      part('R9', 'resistor', ['v33', null], 100),
      part('R10', 'resistor', ['v33', '0']),
      part('Q1', 'transistor', ['v33', '0', 'vbat']),
      part('J1', 'connector', ['vbat', '0']),
    ]);
    expect(left).toEqual([
      { ref: 'R9', why: 'not-probed' },
      { ref: 'R10', why: 'no-value' },
      { ref: 'Q1', why: 'no-law' },
      { ref: 'J1', why: 'no-law' },
    ]);
  });

  it('is none while battery and ground are not named, or the voltage of the battery is not known', () => {
    expect(tracedNetlist([part('R1', 'resistor', ['a', 'b'], 10)], 3.9)).toBeNull();
    expect(tracedNetlist(TRACED, null)).toBeNull();
  });
});
