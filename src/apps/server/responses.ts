import type { z } from '@hono/zod-openapi';
import { problemFor, problemOfRefusal, type ProblemCode } from '../../bench/words.ts';
import { Problem } from '../../bench/views/index.ts';

/** An answer of JSON in the description of a route. */
export const answers = <T extends z.ZodType>(schema: T, description: string) => ({
  200: { description, content: { 'application/json': { schema } } },
});

/** The body of a request as JSON in the description of a route. */
export const jsonBody = <T extends z.ZodType>(schema: T) => ({ required: true, content: { 'application/json': { schema } } });

/** The status that each code is answered with; codes that only the command line speaks are not here. */
export const STATUS = {
  'bad-input': 400,
  'bad-json': 400,
  'no-photos': 400,
  'bad-bundle': 400,
  'foreign-host': 403,
  'foreign-origin': 403,
  'no-such-address': 404,
  'no-such-item': 404,
  'no-such-model': 404,
  'no-such-photo': 404,
  'no-such-choice': 404,
  'not-empty': 409,
  'body-too-large': 413,
  'unsupported-media-type': 415,
  unexpected: 500,
  'web-not-built': 503,
  'no-plans': 503,
} as const satisfies Partial<Record<ProblemCode, number>>;

export type AnsweredCode = keyof typeof STATUS;

const MEANING: Readonly<Record<number, string>> = {
  400: 'The request does not fit',
  403: 'Not from a page of this bench',
  404: 'There is no such thing',
  409: 'A rule of the job refuses it',
  413: 'Too large',
  415: 'A type of content that is not taken here',
  500: 'Not expected',
  503: 'Not on this bench',
};

/** The refusals of a route, by status, each with an example of what the server sends. Foreign pages and the unexpected come by themselves. */
export function refusals(...codes: readonly AnsweredCode[]) {
  const all: readonly AnsweredCode[] = [...codes, 'foreign-host', 'unexpected'];
  const statuses = [...new Set(all.map((code) => STATUS[code]))];
  return Object.fromEntries(
    statuses.map((status) => [
      status,
      refusal(
        status,
        all.filter((code) => STATUS[code] === status),
      ),
    ]),
  );
}

const refusal = (status: number, codes: readonly AnsweredCode[]) => ({
  description: MEANING[status]!,
  content: {
    'application/json': {
      schema: Problem,
      examples: Object.fromEntries(codes.map((code) => [code, { value: problemFor(code, { where: 'query.limit', detail: '…' }) }])),
    },
  },
});

/** The refusal of an event by a rule of the job, which each rule words for itself. */
export const ruleRefusal = {
  409: {
    description: MEANING[409]!,
    content: {
      'application/json': {
        schema: Problem,
        examples: {
          'slot-occupied': {
            value: problemOfRefusal({
              ok: false,
              code: 'slot-occupied',
              index: 0,
              field: 'body.to_item',
              message: 'the display of #1 Blue Tern (blue) still holds its own; take that out first',
            }),
          },
        },
      },
    },
  },
};
