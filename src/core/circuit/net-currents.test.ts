import { describe, expect, it } from 'vitest';
import { asWritten, compileCircuit, currentOut, inPowerState, netCurrents, operatingPoint, readNetlist } from './index.ts';

function currents(text: string, supplies: Readonly<Record<string, number>>): { of(net: string): number; out(supply: string): number } {
  const read = readNetlist(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const circuit = compileCircuit(read.netlist);
  const fed = inPowerState(circuit.netlist, asWritten(circuit.netlist), { supplies });
  const solved = operatingPoint(circuit, fed);
  if (!solved.ok) throw new Error(solved.code);
  const carried = netCurrents(circuit, fed, solved.x);
  return {
    of: (net) => carried[circuit.nodeIndex.get(net)!]!,
    out: (supply) => currentOut(circuit, fed, circuit.partIndex.get(supply)!, solved.x),
  };
}

describe('what a net carries', () => {
  it('is what flows into it, however many parts share it: 10 V over 1 kΩ and two of 2 kΩ side by side', () => {
    const { of } = currents('divider\nV1 in 0 10\nR1 in mid 1k\nR2 mid 0 2k\nR3 mid 0 2k\n', { V1: 10 });
    expect(of('mid')).toBeCloseTo(5e-3, 7);
    expect(of('in')).toBeCloseTo(5e-3, 7);
  });

  it('is that of the supply on its own net, through a junction, and nothing on a net that leads nowhere', () => {
    const text = 'lamp\n.model D D(IS=1e-9 N=1.8 RS=0.5)\nV1 a 0 5\nV2 b 0 3\nR1 a k 220\nD1 k 0 D\nR2 k dead 1k\nR3 b k 10k\n';
    const { of, out } = currents(text, { V1: 5 });
    expect(of('a')).toBeCloseTo(out('v1'), 7);
    expect(of('k')).toBeCloseTo(out('v1'), 7);
    expect(of('dead')).toBeLessThan(1e-7);
    expect(of('b')).toBeLessThan(1e-7);
  });
});
