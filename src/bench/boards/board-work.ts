import type { CircuitFault, CircuitFaultKind } from '../../core/circuit/index.ts';
import { needHolds, type CircuitNeed, type Model } from '../models/index.ts';
import { boardFaults } from './board-faults.ts';
import type { BoardFault, BoardPoint } from './board-knowledge.ts';
import { boardPoints } from './board-points.ts';
import { keyOfLook, lookAt, looksOfFunction, type Look } from './look.ts';
import { readyBoards, simulateLooks, type ReadyBoards } from './simulate-looks.ts';

/** Drawn boards of a dictionary. */
export const DRAWS = 16;

/** What boards of a model are asked, laid out: the same for whoever computes it and for whoever uses it. */
export interface BoardTask {
  readonly model: Model;
  readonly faults: readonly BoardFault[];
  readonly points: readonly BoardPoint[];
  readonly functions: readonly string[];
  /** Faults that stand in every row. */
  readonly already: readonly CircuitFault[];
}

/** Rows of a dictionary, by draw: readings by point, and by function 1 where it works. Row 0 is the board with what is certain only. */
export interface BoardRows {
  readonly from: number;
  readonly count: number;
  /** Row by row, draw by draw, point by point. */
  readonly readings: Float32Array;
  /** Function by function, row by row, draw by draw. */
  readonly works: Float32Array;
}

/** The task of a model with a circuit; `confirmed` are ids of its faults. Unknown ones are left out. */
export function boardTask(model: Model, confirmed: readonly string[]): BoardTask {
  const faults = boardFaults(model);
  const wanted = new Set(confirmed);
  const already = faults.filter(({ id }) => wanted.has(id)).map(({ circuit }) => circuit);
  return { model, faults, points: boardPoints(model), functions: Object.keys(model.file.circuit!.functions), already };
}

/** Steps that grow, so that something is known early and little is done twice. */
const FIRST_STEP = 40;
const GROWTH = 1.8;

/** Rows that are still to be computed, from `first` on, in steps. */
export function* stepsOf(rows: number, first = 0): Generator<{ readonly from: number; readonly count: number }> {
  let [from, step] = [first, FIRST_STEP];
  while (from < rows) {
    const count = Math.min(Math.round(step), rows - from);
    yield { from, count };
    from += count;
    step *= GROWTH;
  }
}

/** Faults that can be there together: each once, and of a part that is missing no other. Solder between two pads is there with the part and without. */
export function togetherOn(faults: readonly CircuitFault[]): CircuitFault[] {
  const gone = new Set(faults.filter(({ kind }) => kind === 'missing').flatMap(({ components }) => components));
  const stays = ({ kind, components }: CircuitFault): boolean => BESIDE_PARTS.has(kind) || !components.some((ref) => gone.has(ref));
  return [...new Set(faults)].filter(stays);
}

const BESIDE_PARTS: ReadonlySet<CircuitFaultKind> = new Set(['missing', 'bridge', 'liquid-leak']);

/** Computes rows of a task, step by step. */
export class BoardWork {
  private readonly ready: ReadyBoards;
  private readonly looks: readonly Look[];

  constructor(readonly task: BoardTask) {
    this.ready = readyBoards(task.model, DRAWS);
    const { functions } = task.model.file.circuit!;
    const all = [...task.points.map((point) => lookAt(point, task.model.circuit!)), ...Object.values(functions).flatMap(looksOfFunction)];
    this.looks = all;
  }

  rows(from: number, count: number): BoardRows {
    const { points, faults, functions, already } = this.task;
    const sets = Array.from({ length: count }, (_, i) =>
      togetherOn([...already, ...(from + i === 0 ? [] : [faults[from + i - 1]!.circuit])]),
    );
    const values = simulateLooks(this.ready, sets, this.looks);
    const cells = count * DRAWS;
    const readings = new Float32Array(cells * points.length);
    const works = new Float32Array(functions.length * cells);
    for (let cell = 0; cell < cells; cell++) {
      const row = values.subarray(cell * this.looks.length, (cell + 1) * this.looks.length);
      readings.set(row.subarray(0, points.length), cell * points.length);
      const set = sets[Math.floor(cell / DRAWS)]!;
      functions.forEach((name, f) => (works[f * cells + cell] = this.works(name, row, set)));
    }
    return { from, count, readings, works };
  }

  /** 1 where all needs of the function hold, 0 where one does not, NaN where no operating point was found. */
  private works(name: string, row: Float64Array, set: readonly CircuitFault[]): number {
    const { file } = this.task.model;
    const { state, needs } = file.circuit!.functions[name]!;
    let isLost = false;
    const read = (look: Look): number | null => {
      const value = row[this.place(look)]!;
      if (Number.isNaN(value)) isLost = true;
      return Number.isFinite(value) ? value : null;
    };
    const look = {
      volts: (red: string, black: string, at: string) => read({ mode: 'volts', state: at, red, black }),
      ohms: (red: string, black: string, at: string) => read({ mode: 'ohms', state: at, red, black }),
      amps: (supply: string, at: string) => read({ mode: 'amps', state: at, red: '0', black: '0', supply }),
      partWell: (ref: string) => set.every(({ components }) => !components.includes(ref.toLowerCase())),
    };
    const holds = needs.every((need: CircuitNeed) => needHolds(need, state, file.circuit!, look));
    return isLost && !holds ? NaN : Number(holds);
  }

  private places: Map<string, number> | undefined;
  private place(look: Look): number {
    this.places ??= new Map(this.looks.map((each, i) => [keyOfLook(each), i]));
    return this.places.get(keyOfLook(look))!;
  }
}

/** Rows that are taken over at once: few enough for a bench to stay quick meanwhile. */
const SLICE = 12;

/** The same rows in slices, each with numbers of its own. */
export function* slicesOf({ points, functions }: Pick<BoardTask, 'points' | 'functions'>, rows: BoardRows): Generator<BoardRows> {
  const row = DRAWS * points.length;
  for (let at = 0; at < rows.count; at += SLICE) {
    const count = Math.min(SLICE, rows.count - at);
    const works = new Float32Array(functions.length * count * DRAWS);
    functions.forEach((_, f) => {
      const start = (f * rows.count + at) * DRAWS;
      works.set(rows.works.subarray(start, start + count * DRAWS), f * count * DRAWS);
    });
    yield { from: rows.from + at, count, readings: rows.readings.slice(at * row, (at + count) * row), works };
  }
}
