import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileCircuit, operatingPoint, readNetlist } from '../../index.ts';
import { BOARD_LAWS } from '../board-laws.ts';
import { ROUNDING_V, softMax, softMin } from './rounding.ts';

const PARAMS = {
  LINREG: { vset: 3.3, dropout: 0.25, ilimit: 0.3, rout: 0.02, iq: 50e-6, von: 1 },
  BUCK: { vset: 3.3, eff: 0.9, uvlo: 4, ilimit: 1, rout: 0.02, iq: 100e-6, von: 1, rdrop: 0.2 },
  BOOST: { vset: 5, eff: 0.85, uvlo: 2.6, ilimit: 0.8, rout: 0.02, iq: 100e-6, von: 1, vf: 0.35 },
  CHARGER: { icc: 0.4, vcv: 4.2, vmin: 4, headroom: 0.15, iq: 200e-6, rout: 0.02 },
  LOAD: { i: 0.05, von: 1.5 },
} as const;
type Kind = keyof typeof PARAMS;
const KINDS = Object.keys(PARAMS) as Kind[];

/** Node voltages of a netlist whose first line is added here. */
function solve(text: string): (node: string) => number {
  const read = readNetlist(`t\n${text}`);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const circuit = compileCircuit(read.netlist);
  const solution = operatingPoint(circuit);
  if (!solution.ok) throw new Error(solution.code);
  return (node) => solution.x[circuit.nodeIndex.get(node)!]!;
}

describe('the rounding of corners', () => {
  it('is exact away from the corner and a quarter of its width off at it', () => {
    expect([softMax(1, 2), softMin(1, 2)]).toEqual([2, 1]);
    expect(softMax(1, 1)).toBeCloseTo(1 + ROUNDING_V / 4, 12);
    expect(softMin(1, 1)).toBeCloseTo(1 - ROUNDING_V / 4, 12);
  });
});

describe('the slopes of every law', () => {
  it.each(KINDS)('%s: are those of its own values', (kind) => {
    const law = BOARD_LAWS[kind](PARAMS[kind]);
    const n = law.unknowns;
    const voltage = fc.double({ min: -1, max: 6, noNaN: true });
    const state = fc.array(voltage, { minLength: n, maxLength: n });
    const [out, above, below, slope, unused] = [5, 5, 5, 25, 25].map((length) => new Float64Array(length));
    fc.assert(
      fc.property(state, fc.double({ min: 0.5, max: 2, noNaN: true }), (values, scale) => {
        const v = Float64Array.from(values);
        if (law.ownCurrent) v[n - 1]! /= 5;
        law.evaluate(v, scale, out!, slope!);
        for (let col = 0; col < n; col++) {
          const step = 1e-7;
          v[col]! += step;
          law.evaluate(v, scale, above!, unused!);
          v[col]! -= 2 * step;
          law.evaluate(v, scale, below!, unused!);
          v[col]! += step;
          for (let row = 0; row < n; row++) {
            const quotient = (above![row]! - below![row]!) / (2 * step);
            expect(Math.abs(slope![row * n + col]! - quotient)).toBeLessThan(1e-3 * (1 + Math.abs(quotient)));
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it.each(KINDS)('%s: takes at its ground what goes in at its other nodes', (kind) => {
    const law = BOARD_LAWS[kind](PARAMS[kind]);
    const nodes = law.unknowns - (law.ownCurrent ? 1 : 0);
    const [out, slope] = [new Float64Array(5), new Float64Array(25)];
    law.evaluate(Float64Array.of(4.5, 3.2, 0.1, 3, 0.05), 1, out, slope);
    const sum = out.subarray(0, nodes).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(0, 12);
    expect(Math.max(...out.subarray(0, nodes).map(Math.abs))).toBeGreaterThan(1e-6);
  });

  it.each(KINDS)('%s: carries nothing when nothing is powered', (kind) => {
    const law = BOARD_LAWS[kind](PARAMS[kind]);
    const [out, slope] = [new Float64Array(5), new Float64Array(25)];
    law.evaluate(new Float64Array(5), 1, out, slope);
    expect(Math.max(...out.map(Math.abs))).toBeLessThan(1e-12);
  });
});

describe('a linear regulator', () => {
  const at = (supply: number, ohm: number, enable = 'in') =>
    solve(
      `V1 in 0 ${supply}\nRL out 0 ${ohm}\nREN in off 1meg\nROFF off 0 1k\nX1 in out 0 ${enable} LINREG vset=3.3 dropout=0.3 ilimit=0.3`,
    );

  it('holds its set-point less the drop in its output resistance', () => {
    expect(at(5, 33)('out')).toBeCloseTo(3.3 / (1 + 0.02 / 33), 4);
  });

  it('in dropout gives the input less a drop in proportion to the current', () => {
    // 0.3 V at 0.3 A is 1 Ω in series.
    expect(at(3.2, 31)('out')).toBeCloseTo((3.2 * 31) / 32, 3);
  });

  it('gives no more than its current limit', () => {
    expect(at(5, 2)('out') / 2).toBeCloseTo(0.3, 2);
  });

  it('gives nothing while its enable pin is low', () => {
    expect(at(5, 33, 'off')('out')).toBeCloseTo(0, 6);
  });

  it('takes what it gives and its own consumption', () => {
    const v = solve('V1 s 0 5\nRS s in 1\nRL out 0 33\nX1 in out 0 in LINREG vset=3.3 iq=1m');
    expect(5 - v('in')).toBeCloseTo(v('out') / 33 + 1e-3, 5);
  });
});

describe('a step-up converter', () => {
  const at = (cell: number, ohm: number) =>
    solve(`V1 s 0 ${cell}\nRS s in 0.1\nRL out 0 ${ohm}\nX1 in out 0 in BOOST vset=5 eff=0.8 uvlo=2.5 ilimit=1 iq=0`);

  it('takes the power that it gives over its efficiency', () => {
    const v = at(3.7, 50);
    const taken = ((3.7 - v('in')) / 0.1) * v('in');
    expect(v('out') ** 2 / 50 / taken).toBeCloseTo(0.8, 3);
  });

  it('below its lock-out lets the input through, less its diode', () => {
    const v = at(2.2, 50);
    expect(v('out')).toBeCloseTo((2.2 - 0.35) * (50 / 50.2), 2);
  });

  it('takes no more than its current limit', () => {
    const v = at(3.7, 6);
    expect((3.7 - v('in')) / 0.1).toBeCloseTo(1, 1);
    expect(v('out')).toBeLessThan(4.5);
  });
});

describe('a step-down converter', () => {
  const at = (supply: number, ohm: number) =>
    solve(`V1 s 0 ${supply}\nRS s in 0.1\nRL out 0 ${ohm}\nX1 in out 0 in BUCK vset=3.3 eff=0.9 uvlo=4 ilimit=1 iq=0`);

  it('takes the power that it gives over its efficiency', () => {
    const v = at(7.4, 10);
    expect(v('out') ** 2 / 10 / (((7.4 - v('in')) / 0.1) * v('in'))).toBeCloseTo(0.9, 3);
  });

  it('is off below its lock-out', () => {
    expect(at(3.8, 10)('out')).toBeCloseTo(0, 3);
  });
});

describe('a charger', () => {
  const at = (cell: number, supply = 5) => solve(`V1 in 0 ${supply}\nVC c 0 ${cell}\nRC c bat 0.2\nX1 in bat 0 CHARGER icc=0.4 vcv=4.2`);
  const current = (cell: number, supply?: number): number => (at(cell, supply)('bat') - cell) / 0.2;

  it('fills a low cell with its constant current', () => {
    expect(current(3.5)).toBeCloseTo(0.4, 2);
  });

  it('holds a full cell at its constant voltage, so that the current falls', () => {
    // 4.2 V behind 20 mΩ against 4.18 V behind 200 mΩ.
    expect(current(4.18)).toBeCloseTo(0.02 / 0.22, 3);
  });

  it('takes nothing from a cell whose charger has no input', () => {
    expect(current(4, 0)).toBeCloseTo(0, 6);
  });
});

describe('a load', () => {
  it('draws its current above its voltage, and nothing below it or backwards', () => {
    const drawn = (supply: number): number => {
      const v = solve(`V1 s 0 ${supply}\nRS s a 1\nX1 a 0 LOAD i=20m von=1.5`);
      return supply - v('a');
    };
    expect(drawn(3)).toBeCloseTo(0.02, 6);
    expect(drawn(1)).toBeCloseTo(0, 5);
    expect(drawn(-3)).toBeCloseTo(0, 6);
  });
});
