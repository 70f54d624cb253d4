import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { BoardWork, boardTask, DRAWS, type BoardTask } from '../../src/bench/boards/index.ts';
import { Id } from '../../src/bench/events/index.ts';
import { padsOf, type Model } from '../../src/bench/models/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

let models: ReadonlyMap<string, Model>;
beforeAll(async () => {
  ({ models } = await loadModels(join(import.meta.dirname, '../../models')));
});

/** Faults by part, on the whole: a resistor or a capacitor has four, a coil two, a chip four and one a joint, and there are bridges. */
const LEAST = 4;
const MOST = 8;

describe.each(['tern-tn20', 'corrie-cp4'])('what is asked of boards of the %s', (id) => {
  let model: Model;
  let task: BoardTask;
  beforeAll(() => {
    model = models.get(id)!;
    task = boardTask(model, []);
  });

  it('has some faults of each part of the board, each named once, in a block of the model', () => {
    const { faults } = task;
    const onBoard = model.circuit!.parts.filter(({ side, elements }) => side !== 'off' && elements.length > 0);
    const thought = new Set(faults.flatMap(({ refs }) => refs));
    expect(onBoard.filter(({ ref }) => !thought.has(ref)).map(({ ref }) => ref)).toEqual([]);
    expect(faults.length / onBoard.length).toBeGreaterThan(LEAST);
    expect(faults.length / onBoard.length).toBeLessThan(MOST);
    expect(new Set(faults.map((fault) => fault.id)).size).toBe(faults.length);
    const blocks = new Set(model.file.blocks.map((block) => block.id));
    expect(faults.filter(({ block, rate }) => !blocks.has(block) || !(rate > 0 && rate <= 1))).toEqual([]);
  });

  it('has no fault of a supply that only feeds it from outside', () => {
    const outside = model.circuit!.netlist.parts.filter(({ kind }) => kind === 'V' || kind === 'I').map(({ name }) => name.toLowerCase());
    expect(outside.length).toBeGreaterThan(0);
    expect(task.faults.filter(({ circuit }) => circuit.components.some((part) => outside.includes(part)))).toEqual([]);
  });

  it('measures every net with a pad in volts, ohms and diode mode, under ids that events can name', () => {
    const nets = new Set(
      model.circuit!.parts.flatMap((part) => (part.side === 'off' ? [] : padsOf({ ...part, side: part.side }))).map(({ net }) => net),
    );
    nets.delete(null);
    nets.delete('0');
    for (const mode of ['volts', 'ohms', 'diode'] as const) {
      const measured = new Set(task.points.filter((point) => point.mode === mode && point.black === '0').map(({ red }) => red));
      expect([...nets].filter((net) => !measured.has(net!))).toEqual([]);
    }
    expect(task.points.filter((point) => !Id.safeParse(point.id).success)).toEqual([]);
    expect(task.points.filter(({ named }) => named).map((point) => point.id)).toEqual(
      model.file.points.filter((point) => model.file.circuit!.points[point.id]).map((point) => point.id),
    );
  });

  it('finds an operating point for the healthy board and its most frequent faults, and all works on the healthy one', () => {
    const { readings, works, count } = new BoardWork(task).rows(0, 12);
    expect(readings.some(Number.isNaN)).toBe(false);
    const wellOf = task.functions.map((_, f) => [...works.subarray(f * count * DRAWS, f * count * DRAWS + DRAWS)]);
    expect(wellOf.flat().every((value) => value === 1)).toBe(true);
    expect(works.includes(0)).toBe(true);
  });
});
