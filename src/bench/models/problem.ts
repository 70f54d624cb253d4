import { nearest } from '../rules/nearest.ts';

export type ModelProblemCode =
  | 'model-unreadable'
  | 'model-too-large'
  | 'model-syntax'
  | 'model-aliases'
  | 'model-shape'
  | 'model-unknown-field'
  | 'model-wrong-id'
  | 'model-duplicate-id'
  | 'model-unknown-name'
  | 'model-check-kind'
  | 'model-transplant-slot'
  | 'model-behaves-sum'
  | 'model-off-board'
  | 'model-fasteners'
  | 'model-cycle'
  | 'model-base'
  | 'model-readings'
  | 'model-circuit'
  | 'model-netlist'
  | 'model-placement';

/** What is wrong at one place of a model file, and what to do next. */
export interface ModelProblem {
  readonly ok: false;
  readonly code: ModelProblemCode;
  /** Keys and list positions (from 0) that lead to it; empty for the file as a whole. */
  readonly path: readonly (string | number)[];
  /** A clause that says what is wrong: "names the block "memroy", which is not in blocks". */
  readonly message: string;
  /** A sentence that says how to go on. */
  readonly next: string;
}

export const problem = (code: ModelProblemCode, path: ModelProblem['path'], message: string, next: string): ModelProblem => ({
  ok: false,
  code,
  path,
  message,
  next,
});

/** `blocks.3.at`, as it stands in a message; "the file" for the file as a whole. */
export const fieldText = (path: ModelProblem['path']): string => (path.length === 0 ? 'the file' : path.join('.'));

/** "Known here: a, b, c.", the most alike first. */
export const knownHere = (wanted: string, names: Iterable<string>): string => `Known here: ${nearest(wanted, names)}.`;
