import { HANDHELD_METER, meterError } from '../../core/circuit/index.ts';
import { fillRow, kernelsOf, type Kernels, type SimulatePairs } from '../../core/diagnosis/readings/index.ts';
import type { BoardKnowledge } from './board-knowledge.ts';
import { DRAWS, type BoardRows, type BoardTask } from './board-work.ts';

/** Takes rows of a dictionary as they come, in order, and says what is known by then. */
export class GrownKnowledge {
  private readonly kernels: Kernels;
  private readonly functions: ReadonlyMap<string, Float32Array>;
  private done = 0;

  constructor(
    readonly task: BoardTask,
    readonly hash: string,
    private readonly simulate: SimulatePairs,
  ) {
    const rows = 1 + task.faults.length;
    const faults = task.faults.map(({ id, block, refs, rate }) => ({ id, block, part: refs[0] ?? id, rate }));
    const values = new Float64Array(rows * DRAWS * task.points.length).fill(NaN);
    const dictionary = { faults, points: task.points, draws: DRAWS, values };
    this.kernels = kernelsOf(dictionary, (mode, value) => meterError(HANDHELD_METER, mode, value));
    this.functions = new Map(task.functions.map((name) => [name, new Float32Array(rows * DRAWS).fill(NaN)]));
  }

  get rows(): number {
    return 1 + this.task.faults.length;
  }

  take({ from, count, readings, works }: BoardRows): void {
    const { points } = this.task;
    this.kernels.dictionary.values.set(readings, from * DRAWS * points.length);
    this.task.functions.forEach((name, f) => {
      const part = works.subarray(f * count * DRAWS, (f + 1) * count * DRAWS);
      this.functions.get(name)!.set(part, from * DRAWS);
    });
    for (let row = from; row < from + count; row++) fillRow(this.kernels, row);
    this.done = from + count;
  }

  /** Everything taken so far, as rows that `take` understands. */
  all(): BoardRows {
    const readings = Float32Array.from(this.kernels.dictionary.values);
    const works = Float32Array.from(this.task.functions.flatMap((name) => [...this.functions.get(name)!]));
    return { from: 0, count: this.rows, readings, works };
  }

  knowledge(): BoardKnowledge | null {
    if (this.done === 0) return null;
    const { faults, points } = this.task;
    const baseline = { kernels: this.kernels, functions: this.functions, simulate: this.simulate };
    return { hash: this.hash, faults, points, baseline, done: this.done, rows: this.rows };
  }
}
