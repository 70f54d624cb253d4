import type { Problem } from '../../bench/views/index.ts';
import { problemFor, type ProblemCode, type ProblemFields } from '../../bench/words.ts';

/** How a run of the command ends; scripts may rely on these. */
export const EXIT = { done: 0, refused: 1, usage: 2, store: 3 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Ends the command with a problem and an exit code. */
export class Stop extends Error {
  constructor(
    readonly exitCode: ExitCode,
    readonly problem: Problem,
  ) {
    super(problem.message);
    this.name = 'Stop';
  }

  get code(): string {
    return this.problem.code;
  }
}

/** The end for input that cannot be used. */
export const misuse = (code: ProblemCode, fields?: ProblemFields): Stop => new Stop(EXIT.usage, problemFor(code, fields));
