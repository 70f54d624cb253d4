import { describe, expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import {
  applyFaults,
  asWritten,
  atSeverity,
  CircuitError,
  compileCircuit,
  drawBoards,
  faultUniverse,
  measure,
  powered,
  readNetlist,
  unpowered,
  type Draw,
  type FaultSet,
  type Netlist,
  type UnpoweredPoint,
} from '../index.ts';

const BOARD = `board
XBT1 cell 0 BATTERY v=3.8 r=0.1
RS1 cell vsys 0.05
XU1 vsys v33 0 vsys LINREG vset=3.3 dropout=0.2
RR1 v33 a 10k
RR2 a 0 10k
DD1 a v33 DS
DD2 0 a DS
RR3 v33 b 47k
QQ1 c b 0 QN
RR4 v33 c 1k
RR5 v33 d 2.2meg
RR6 d 0 1meg
XU2 v33 0 LOAD i=20m von=2
DD3 d e DS
CC1 v33 0 1u
.model DS D(IS=2e-9 N=1.8 RS=0.6)
.model QN NPN(IS=1e-14 BF=150 VAF=80)`;
const read = readNetlist(BOARD);
if (!read.ok) throw new Error(read.problems[0]!.message);
const netlist: Netlist = read.netlist;
const circuit = compileCircuit(netlist);
const faults = faultUniverse(netlist);
const sets: FaultSet[] = [[], ...faults.map((fault) => [fault]), [faults[3]!, faults.at(-1)!]];
const draws = drawBoards(netlist, 3, randomStream('draws'));
const state = { supplies: { XBT1: 3.8 } };
const nodes = netlist.nodes.map((red) => ({ red }));

/** The meter on one faulted board, by itself. */
function alone(set: FaultSet, draw: Draw) {
  const sized = set.map(({ changes }) => ({ changes: atSeverity(changes, draw.severity) }));
  const faulted = applyFaults(netlist, { ...asWritten(netlist), scale: draw.scale }, sized);
  const own = compileCircuit(faulted.netlist);
  return (request: Parameters<typeof measure>[2]): number => {
    const reading = measure(own, faulted.conditions, request);
    if (!reading.ok) throw new Error(reading.code);
    return reading.value ?? Infinity;
  };
}

/** Compares every reading of a simulation with the meter's own; the largest relative difference, of at least `floor`. */
function worst(values: Float64Array, count: number, floor: number, truth: (set: FaultSet, draw: Draw) => (p: number) => number): number {
  let most = 0;
  sets.forEach((set, s) =>
    draws.forEach((draw, d) => {
      const reading = truth(set, draw);
      for (let p = 0; p < count; p++) {
        const [got, want] = [values[(s * draws.length + d) * count + p]!, reading(p)];
        if (got !== want) most = Math.max(most, Math.abs(got - want) / Math.max(Math.abs(want), floor));
      }
    }),
  );
  return most;
}

describe('readings of many faulted boards', () => {
  it('under power are those of the meter on each board by itself', () => {
    const result = powered(circuit, sets, draws, { state, points: nodes });
    expect(result).toMatchObject({ failures: 0, done: sets.length, shape: [sets.length, 3, nodes.length] });
    const truth = (set: FaultSet, draw: Draw) => {
      const meter = alone(set, draw);
      return (p: number) => meter({ mode: 'volts', red: nodes[p]!.red, power: state });
    };
    // A tenth of what a meter of 0.5 % can tell: high points are loaded by the ratio of the first draw.
    expect(worst(result.values, nodes.length, 0.01, truth)).toBeLessThan(1e-3);
  });

  it('without power are those of the meter on each board by itself', () => {
    const points: UnpoweredPoint[] = nodes.flatMap(({ red }): UnpoweredPoint[] => [
      { red, mode: 'ohms' },
      { red, mode: 'diode' },
    ]);
    points.push({ red: 'c', black: 'b', mode: 'diode' });
    const result = unpowered(circuit, sets, draws, { points });
    expect(result.failures).toBe(0);
    const truth = (set: FaultSet, draw: Draw) => {
      const meter = alone(set, draw);
      return (p: number) => meter(points[p]!);
    };
    // What a fault changes by less than 1e-3 to first order is taken over from the healthy board.
    expect(worst(result.values, points.length, 1e-3, truth)).toBeLessThan(3e-3);
  });

  it('show a dirty contact of a key that is held, and nothing of one that is not', () => {
    const keyed = readNetlist('key\nRK1 k 0 1g\nRP1 k v 10k\nRL1 v 0 1k');
    if (!keyed.ok) throw new Error(keyed.problems[0]!.message);
    const own = compileCircuit(keyed.netlist);
    const dirty: FaultSet = [{ changes: [{ does: 'scale', part: 'rk1', by: 400 }] }];
    const points: UnpoweredPoint[] = [{ red: 'k', mode: 'ohms' }];
    const readingsOf = (switches: Record<string, 'on' | 'off'>): number[] => [
      ...unpowered(
        own,
        [[], dirty],
        drawBoards(keyed.netlist, 1, randomStream('key'), () => 0),
        { points, switches },
      ).values,
    ];
    const [held, heldDirty] = readingsOf({ RK1: 'on' });
    expect(held).toBeCloseTo(0.05, 3);
    expect(heldDirty).toBeCloseTo(20, 0);
    const [off, offDirty] = readingsOf({ RK1: 'off' });
    expect(offDirty).toBe(off);
  });

  it('are the same for sets that change the circuit alike', () => {
    const [open, missing] = ['r1:open', 'r1:missing'].map((id) => faults.find((fault) => fault.id === id)!);
    const { values } = powered(circuit, [[open!], [missing!]], draws, { state, points: nodes });
    expect(values.slice(0, values.length / 2)).toEqual(values.slice(values.length / 2));
  });

  it('stop between sets when told to, and what was not reached holds nothing', () => {
    let asked = 0;
    const result = powered(circuit, sets, draws, { state, points: nodes, shouldStop: () => ++asked > 2 });
    expect(result.done).toBe(2);
    const row = draws.length * nodes.length;
    expect(result.values.subarray(0, 2 * row).every(Number.isFinite)).toBe(true);
    expect(result.values.subarray(2 * row).every(Number.isNaN)).toBe(true);
  });

  it('need a drawn board', () => {
    expect(() => powered(circuit, sets, [], { state, points: nodes })).toThrow(CircuitError);
    expect(() => unpowered(circuit, sets, [], { points: [] })).toThrow(CircuitError);
  });
});

describe('drawn boards', () => {
  it('are the same for the same seed and spread as they are told', () => {
    const drawn = drawBoards(netlist, 2000, randomStream('spread'), ({ name }) => (name === 'RR1' ? 0.05 : undefined));
    expect(drawBoards(netlist, 3, randomStream('draws'))).toEqual(draws);
    const at = circuit.partIndex.get('rr1')!;
    const logs = drawn.map(({ scale }) => Math.log(scale[at]!));
    const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
    const spread = Math.sqrt(logs.reduce((sum, v) => sum + (v - mean) ** 2, 0) / logs.length);
    expect(mean).toBeCloseTo(0, 2);
    expect(spread).toBeCloseTo(0.05, 2);
    const severities = drawn.map(({ severity }) => severity);
    expect(severities.reduce((sum, z) => sum + z * z, 0) / drawn.length).toBeCloseTo(1, 2);
    expect(severities).toEqual(severities.toSorted((a, b) => a - b));
    expect(drawn[0]!.scale[circuit.partIndex.get('cc1')!]).toBe(1);
  });
});
