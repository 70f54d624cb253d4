import type { Refusal } from '../../bench/bench.ts';
import { problemFor, problemOfRefusal, type ProblemFields } from '../../bench/words.ts';
import type { Problem } from '../../bench/views/index.ts';
import { STATUS, type AnsweredCode } from './responses.ts';

/** A request that is answered with a problem. Thrown by the routes, turned into the answer in one place. */
export class Refused extends Error {
  constructor(
    readonly status: 400 | 401 | 403 | 404 | 409 | 413 | 415 | 429 | 500 | 502 | 503,
    readonly problem: Problem,
  ) {
    super(problem.message);
    this.name = 'Refused';
  }

  get code(): string {
    return this.problem.code;
  }
}

/** The refusal of a code, with its own status. */
export const refuse = (code: AnsweredCode, fields?: ProblemFields): Refused => new Refused(STATUS[code], problemFor(code, fields));

/** A batch that the bench did not take: the event itself was wrong (400), or a rule of the job forbids it (409). */
export const refusedBatch = (refusal: Refusal, of = 1): Refused =>
  new Refused(refusal.code === 'bad-event' ? 400 : 409, problemOfRefusal(refusal, of));
