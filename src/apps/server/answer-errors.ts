import type { Context, Env } from 'hono';
import type { Hook } from '@hono/zod-openapi';
import { routePath } from 'hono/route';
import { HTTPException } from 'hono/http-exception';
import { problemFor, problemOfStore } from '../../bench/words.ts';
import type { AppParts } from './app-parts.ts';
import type { AnsweredCode } from './responses.ts';
import { Refused, refuse } from './refused.ts';

/** What an input that does not fit its schema is refused with: the first mistake, and where it stands. */
export const refuseBadInput: Hook<unknown, Env, string, unknown> = (result) => {
  if (result.success) return;
  const [issue] = result.error.issues;
  const place = result.target === 'json' ? 'body' : result.target;
  const where = [place, ...(issue?.path ?? []).map(String)].join('.');
  throw refuse('bad-input', { where, detail: clause(issue?.message ?? 'its value is wrong') });
};

/** "Invalid input: expected number" as the clause "expected number". */
const clause = (message: string): string =>
  message.replace(/^Invalid input: /, '').replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());

const BY_STATUS: Readonly<Record<number, AnsweredCode>> = { 400: 'bad-json', 413: 'body-too-large', 415: 'unsupported-media-type' };

/** The one place where errors become answers; what nobody expected is logged, and told without its inside. */
export const answerError =
  (log: AppParts['log']) =>
  (error: Error, c: Context): Response => {
    if (error instanceof Refused) return c.json(error.problem, error.status);
    const expected = error instanceof HTTPException ? BY_STATUS[error.status] : undefined;
    if (expected) return c.json(problemFor(expected), (error as HTTPException).status);
    log(`${c.req.method} ${routePath(c, -1)} failed`, error);
    const trouble = problemOfStore(error);
    return trouble ? c.json(trouble, 503) : c.json(problemFor('unexpected'), 500);
  };
