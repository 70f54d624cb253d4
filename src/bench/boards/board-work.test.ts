import { describe, expect, it } from 'vitest';
import { applyFaults, compileCircuit, measure } from '../../core/circuit/index.ts';
import { circuitInState } from '../models/index.ts';
import { lampModel } from '../advice/testing/lamp-board.ts';
import { BoardWork, boardPoints, boardTask, DRAWS, GrownKnowledge, simulatedPairs, slicesOf, stepsOf, togetherOn } from './index.ts';

const model = lampModel();
const task = boardTask(model, []);
const work = new BoardWork(task);
const rows = 1 + task.faults.length;
const all = work.rows(0, rows);
const at = (row: number, point: number): number[] =>
  Array.from({ length: DRAWS }, (_, d) => all.readings[(row * DRAWS + d) * task.points.length + point]!);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The same asked of the circuit itself, without tolerances; Infinity is OL. */
function measured(point: (typeof task.points)[number], fault?: (typeof task.faults)[number]): number {
  const { circuit, file } = model;
  const { conditions, power } = circuitInState(
    circuit!,
    file.circuit!.states.find(({ id }) => id === point.power)!,
  );
  const faulted = applyFaults(circuit!.netlist, conditions, fault ? [fault.circuit] : []);
  const { red, black, mode } = point;
  const request = mode === 'volts' ? { mode, red, black, power } : { mode: mode as 'ohms' | 'diode', red, black };
  const reading = measure(compileCircuit(faulted.netlist), faulted.conditions, request);
  return reading.ok ? (reading.value ?? Infinity) : NaN;
}

describe('points of a board', () => {
  it('have each name once, in the letters of names, and no place that the file measures already', () => {
    const points = boardPoints(model);
    expect(new Set(points.map(({ id }) => id)).size).toBe(points.length);
    expect(points.filter(({ id }) => !/^[A-Za-z0-9][A-Za-z0-9_.-]{0,63}$/.test(id))).toEqual([]);
    const looks = points.map(({ mode, power, red, black, held = '' }) => [mode, power, red, black, held].join(' '));
    expect(new Set(looks).size).toBe(looks.length);
  });
});

describe('what is computed of a board', () => {
  it('is what the meter shows on the healthy circuit, within its tolerances', () => {
    for (const [p, point] of task.points.entries()) {
      if (point.mode === 'amps' || point.held !== undefined) continue;
      const [drawn, exact] = [at(0, p), measured(point)];
      if (exact === Infinity) expect([point.id, ...drawn.filter((value) => value !== Infinity)]).toEqual([point.id]);
      else expect(Math.abs(mean(drawn) - exact)).toBeLessThanOrEqual(0.02 + 0.08 * Math.abs(exact));
    }
  });

  it('is what the meter shows with a fault at the points of the file', () => {
    // Severities run from low to high over the draws: those in the middle are typical, as the circuit is asked.
    const typical = (values: readonly number[]): number => mean(values.slice(DRAWS / 2 - 2, DRAWS / 2 + 2));
    for (const [i, fault] of task.faults.entries()) {
      for (const [p, point] of task.points.entries()) {
        if (!point.named || point.mode !== 'volts') continue;
        const exact = measured(point, fault);
        if (Number.isFinite(exact))
          expect(Math.abs(typical(at(1 + i, p)) - exact), `${fault.id} at ${point.id}`).toBeLessThanOrEqual(0.05 + 0.1 * Math.abs(exact));
      }
    }
  });

  it('says that every function works on the healthy board, and that each can be stopped by a fault', () => {
    task.functions.forEach((_, f) => {
      const values = all.works.subarray(f * rows * DRAWS, (f + 1) * rows * DRAWS);
      expect([...values.subarray(0, DRAWS)]).toEqual(Array.from({ length: DRAWS }, () => 1));
      expect(values.includes(0)).toBe(true);
    });
  });

  it('comes out the same in steps and in slices as at once', () => {
    const grown = new GrownKnowledge(task, 'hash', simulatedPairs(task));
    expect(grown.knowledge()).toBeNull();
    for (const { from, count } of stepsOf(rows)) for (const slice of slicesOf(task, work.rows(from, count))) grown.take(slice);
    const { readings, works } = grown.all();
    expect(readings).toEqual(all.readings);
    expect(works).toEqual(all.works);
    expect(grown.knowledge()).toMatchObject({ done: rows, rows, hash: 'hash' });
  });

  it('counts up while it grows, the most frequent faults first', () => {
    const grown = new GrownKnowledge(task, 'hash', simulatedPairs(task));
    grown.take(work.rows(0, 3));
    expect(grown.knowledge()!.done).toBe(3);
    expect(grown.knowledge()!.baseline.kernels.known[2]).toBe(1);
    expect(grown.knowledge()!.baseline.kernels.known[3]).toBe(0);
    const rates = task.faults.map(({ rate }) => rate);
    expect(rates).toEqual([...rates].sort((a, b) => b - a));
  });

  it('with a fault that is certain reads the healthy row as that fault', () => {
    const [certain] = task.faults;
    const other = new BoardWork(boardTask(model, [certain!.id])).rows(0, 1);
    expect([...other.readings]).toEqual([...all.readings.subarray(DRAWS * task.points.length, 2 * DRAWS * task.points.length)]);
  });

  it('has no other fault of a part that is certain to be missing, and still solder between its pads', () => {
    const faultOf = (kind: string) => task.faults.findIndex(({ refs, circuit }) => refs[0] === 'R4' && circuit.kind === kind);
    const [gone, open, drifted] = [faultOf('missing'), faultOf('open'), faultOf('drifted-up')];
    const other = new BoardWork(boardTask(model, [task.faults[gone]!.id]));
    const baseline = [...other.rows(0, 1).readings];
    expect([...other.rows(1 + open, 1).readings]).toEqual(baseline);
    expect([...other.rows(1 + drifted, 1).readings]).toEqual(baseline);
    const bridge = { ...task.faults[gone]!.circuit, id: 'r4-pads', kind: 'bridge' as const };
    const ids = togetherOn([bridge, task.faults[drifted]!.circuit, task.faults[gone]!.circuit, bridge]).map(({ id }) => id);
    expect(ids).toEqual(['r4-pads', 'r4:missing']);
  });

  it('goes on at any row', () => {
    const rest = [...stepsOf(rows, 5)].map(({ from, count }) => work.rows(from, count));
    expect(rest[0]!.from).toBe(5);
    expect(rest.flatMap(({ readings }) => [...readings])).toEqual([...all.readings.subarray(5 * DRAWS * task.points.length)]);
  });

  it('of a pair is simulated as of its two faults, and asked twice gives the same', () => {
    const pairs = simulatedPairs(task);
    const once = pairs([[0, 1]], [0, 2]);
    expect(pairs([[0, 1]], [0, 2])).toEqual(once);
    expect(once).toHaveLength(2 * DRAWS);
    const alone = pairs([[2, 2]], [0]);
    expect(Array.from(alone, Math.fround)).toEqual(at(3, 0));
  });
});
