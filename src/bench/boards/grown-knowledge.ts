import { HANDHELD_METER, meterError, pathOfFault, type Netlist } from '../../core/circuit/index.ts';
import { fillRow, kernelsOf, type Kernels, type ReadingFault, type SimulatePairs } from '../../core/diagnosis/readings/index.ts';
import type { BoardFault, BoardKnowledge } from './board-knowledge.ts';
import { DRAWS, type BoardRows, type BoardTask } from './board-work.ts';

/** Takes rows of a dictionary as they come, in order, and says what is known by then. It takes room in memory with the first row only. */
export class GrownKnowledge {
  private room: Room | undefined;
  private taken = 0;

  constructor(
    readonly task: BoardTask,
    readonly hash: string,
    private readonly simulate: SimulatePairs,
  ) {}

  get rows(): number {
    return 1 + this.task.faults.length;
  }

  /** Rows that are taken over. */
  get done(): number {
    return this.taken;
  }

  take({ from, count, readings, works }: BoardRows): void {
    const { points, functions } = this.task;
    const room = (this.room ??= makeRoom(this.task));
    room.kernels.dictionary.values.set(readings, from * DRAWS * points.length);
    functions.forEach((name, f) => {
      const part = works.subarray(f * count * DRAWS, (f + 1) * count * DRAWS);
      room.functions.get(name)!.set(part, from * DRAWS);
    });
    for (let row = from; row < from + count; row++) fillRow(room.kernels, row);
    this.taken = Math.max(this.taken, from + count);
  }

  /** Everything that was taken, as rows that `take` understands; rows that were not are NaN. */
  all(): BoardRows {
    const { kernels, functions } = (this.room ??= makeRoom(this.task));
    const readings = Float32Array.from(kernels.dictionary.values);
    const works = Float32Array.from(this.task.functions.flatMap((name) => [...functions.get(name)!]));
    return { from: 0, count: this.rows, readings, works };
  }

  /** Null while not even the healthy board is known. */
  knowledge(): BoardKnowledge | null {
    if (!this.room || this.taken === 0) return null;
    const { faults, points } = this.task;
    const baseline = { ...this.room, simulate: this.simulate };
    return { hash: this.hash, faults, points, baseline, done: this.taken, rows: this.rows };
  }
}

/** A fault of a board as the belief from readings takes it. */
export function readingFault(netlist: Netlist, { id, block, refs, rate, circuit }: BoardFault): ReadingFault {
  const path = pathOfFault(netlist, circuit);
  return { id, block, part: refs[0] ?? id, rate, ...(path ? { path } : {}) };
}

interface Room {
  readonly kernels: Kernels;
  readonly functions: ReadonlyMap<string, Float32Array>;
}

function makeRoom({ model, faults, points, functions }: BoardTask): Room {
  const rows = 1 + faults.length;
  const values = new Float64Array(rows * DRAWS * points.length).fill(NaN);
  const { netlist } = model.circuit!;
  const named = faults.map((fault) => readingFault(netlist, fault));
  const kernels = kernelsOf({ faults: named, points, draws: DRAWS, values }, (mode, value) => meterError(HANDHELD_METER, mode, value));
  return { kernels, functions: new Map(functions.map((name) => [name, new Float32Array(rows * DRAWS).fill(NaN)])) };
}
