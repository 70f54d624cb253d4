import type { Problem } from '../../../bench/views/index.ts';

const WORTH_ANOTHER_TRY: readonly string[] = [
  'unreachable',
  'unreadable-answer',
  'unexpected',
  'store-trouble',
  'store-full',
  'store-busy',
  'disk-full',
];

/** Why the bench did not do what was asked, in a sentence that ends with what to do next. */
export class ProblemError extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly where?: string,
    /** Of the answer; 0 where none came. */
    readonly status = 0,
  ) {
    super(message);
    this.name = 'ProblemError';
  }

  /** Asking again, unchanged, may well succeed. */
  get retriable(): boolean {
    return WORTH_ANOTHER_TRY.includes(this.code);
  }
}

/** The problem that an answer with a status of 400 or above carries. */
export async function problemOf(response: Response): Promise<ProblemError> {
  const problem: unknown = await response.json().catch(() => null);
  if (isProblem(problem)) return new ProblemError(problem.code, problem.message, problem.where, response.status);
  return new ProblemError(
    'unreadable-answer',
    `The bench answered with error ${response.status} and gave no reason. Try again in a moment.`,
  );
}

const isProblem = (value: unknown): value is Problem =>
  typeof value === 'object' && value !== null && 'code' in value && 'message' in value && typeof value.message === 'string';

/** The sentence of any error, for showing. */
export const sentenceOf = (error: unknown): string =>
  error instanceof ProblemError ? error.message : 'Something went wrong on this page. Load it again; what was noted is safe.';
