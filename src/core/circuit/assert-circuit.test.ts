import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assertCircuit } from './assert-circuit.ts';
import { asWritten, compileCircuit, DEFAULT_EFFORT, operatingPoint, readNetlist, type Circuit, type Conditions } from './index.ts';

const MODELS = '.model D D(IS=2e-9 N=1.8 RS=0.5)\n.model N NPN(IS=1e-14 BF=150 VAF=80 BR=3)\n.model P PNP(IS=1e-14 BF=90)\n';
const PIN_COUNT = { R: 2, D: 2, N: 3, P: 3 } as const;
type Kind = keyof typeof PIN_COUNT;

interface Wired {
  readonly kind: Kind;
  readonly pins: readonly number[];
  readonly ohm: number;
}

/** Parts between nodes 0 (ground), 1 (a supply through 100 Ω) and up to seven more, each tied to ground by 1 MΩ. */
const networks: fc.Arbitrary<Wired[]> = fc.array(
  fc.record({
    kind: fc.constantFrom<Kind>('R', 'R', 'R', 'D', 'N', 'P'),
    pins: fc.uniqueArray(fc.integer({ min: 0, max: 8 }), { minLength: 3, maxLength: 3 }),
    ohm: fc.integer({ min: 1, max: 5 }).map((decade) => 10 ** decade),
  }),
  { minLength: 1, maxLength: 20 },
);

function textOf(parts: readonly Wired[], supplyV = 6): string {
  const node = (pin: number): string => (pin === 0 ? '0' : `n${pin}`);
  const lines = parts.map(({ kind, pins, ohm }, i) => {
    const nodes = pins.slice(0, PIN_COUNT[kind]).map(node).join(' ');
    return kind === 'R' ? `R${i} ${nodes} ${ohm}` : `${kind === 'D' ? 'D' : 'Q'}${i} ${nodes} ${kind}`;
  });
  const ties = Array.from({ length: 8 }, (_, i) => `RT${i} n${i + 1} 0 1meg`);
  return ['random', MODELS, `V1 s 0 ${supplyV}`, 'RS s n1 100', ...ties, ...lines].join('\n');
}

function compile(text: string): Circuit {
  const read = readNetlist(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return compileCircuit(read.netlist);
}

function solve(circuit: Circuit, conditions?: Conditions, shuntS = DEFAULT_EFFORT.shuntS): Float64Array {
  const solution = operatingPoint(circuit, conditions, undefined, { ...DEFAULT_EFFORT, shuntS });
  if (!solution.ok) throw new Error(`${solution.code} at ${solution.worst}`);
  return solution.x;
}

/** Voltages of the nodes of the netlist. */
const voltages = (circuit: Circuit, x: Float64Array): Float64Array => x.subarray(0, circuit.netlist.nodes.length);

describe('the law of circuits', () => {
  it('holds at the operating point of any network of resistors, diodes and transistors', () => {
    fc.assert(
      fc.property(networks, fc.double({ min: -20, max: 20, noNaN: true }), (parts, supplyV) => {
        const circuit = compile(textOf(parts, supplyV));
        assertCircuit(circuit, asWritten(circuit.netlist), solve(circuit));
      }),
      { numRuns: 300 },
    );
  });

  it('is broken by any other state, and the message names the node', () => {
    const circuit = compile('t\nV1 in 0 5\nR1 in a 1k\nR2 a 0 1k');
    const x = solve(circuit);
    x[circuit.nodeIndex.get('a')!]! += 1e-3;
    expect(() => assertCircuit(circuit, asWritten(circuit.netlist), x)).toThrow(/^at in .* is left over/);
  });

  it('is broken when the parts are not those that were solved', () => {
    const circuit = compile('t\nV1 in 0 5\nR1 in a 1k\nR2 a 0 1k');
    const x = solve(circuit);
    const other = asWritten(circuit.netlist);
    other.scale[circuit.partIndex.get('r2')!] = 2;
    expect(() => assertCircuit(circuit, other, x)).toThrow(/left over/);
  });
});

describe('changes of a network', () => {
  it('leave the voltages when every resistance grows and every current shrinks alike', () => {
    fc.assert(
      fc.property(networks, fc.constantFrom(0.2, 3, 10), (parts, factor) => {
        const circuit = compile(textOf(parts).replaceAll('RS=0.5', 'RS=0'));
        const conditions = asWritten(circuit.netlist);
        circuit.netlist.parts.forEach(({ kind }, i) => {
          if (kind === 'R') conditions.scale[i] = factor;
          if (kind === 'D' || kind === 'Q') conditions.scale[i] = 1 / factor;
        });
        const before = voltages(circuit, solve(circuit));
        const after = voltages(circuit, solve(circuit, conditions, DEFAULT_EFFORT.shuntS / factor));
        // The 1e-12 S across every junction does not shrink, and a transistor may amplify what it lets through.
        before.forEach((v, i) => expect(Math.abs(after[i]! - v)).toBeLessThan(2e-3 * Math.max(1, Math.abs(v))));
      }),
      { numRuns: 150 },
    );
  });

  it('of 0 S across any part are none', () => {
    fc.assert(
      fc.property(networks, (parts) => {
        const circuit = compile(textOf(parts));
        const before = solve(circuit);
        const conditions = { ...asWritten(circuit.netlist), bridge: new Float64Array(circuit.netlist.parts.length) };
        solve(circuit, conditions).forEach((v, i) => expect(v).toBeCloseTo(before[i]!, 9));
      }),
      { numRuns: 100 },
    );
  });

  it('that short a part bring its ends together', () => {
    fc.assert(
      fc.property(networks, fc.nat(), (parts, which) => {
        const circuit = compile(textOf(parts));
        const conditions = asWritten(circuit.netlist);
        const part = 10 + (which % parts.length);
        conditions.bridge[part] = 1000;
        const x = solve(circuit, conditions);
        assertCircuit(circuit, conditions, x);
        const at = (node: string): number => (node === '0' ? 0 : x[circuit.nodeIndex.get(node)!]!);
        const [a, b] = circuit.netlist.parts[part]!.nodes;
        // No more than 60 mA can come through the 100 Ω of the supply.
        expect(Math.abs(at(a!) - at(b!))).toBeLessThan(60e-6 + 1e-6);
      }),
      { numRuns: 150 },
    );
  });
});
