import type { z } from '@hono/zod-openapi';
import { problemFor, problemOfBackup, problemOfRefusal, type ProblemCode } from '../../bench/words.ts';
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
  'no-device-key': 401,
  'foreign-host': 403,
  'role-too-small': 403,
  'other-device': 403,
  'foreign-origin': 403,
  'no-such-address': 404,
  'no-such-item': 404,
  'no-such-bag': 404,
  'no-such-model': 404,
  'no-such-photo': 404,
  'no-such-choice': 404,
  'no-such-device': 404,
  'no-such-comparison': 404,
  'no-reference': 409,
  'no-circuit': 409,
  'not-empty': 409,
  'invite-unknown': 409,
  'device-name-taken': 409,
  'no-network': 409,
  'panel-too-large': 409,
  'photo-too-coarse': 409,
  'board-too-large': 409,
  'body-too-large': 413,
  'unsupported-media-type': 415,
  'too-many-requests': 429,
  unexpected: 500,
  'no-reading': 502,
  'web-not-built': 503,
  'no-plans': 503,
  'no-outlines': 503,
  'no-eyes': 503,
} as const satisfies Partial<Record<ProblemCode, number>>;

export type AnsweredCode = keyof typeof STATUS;

const MEANING: Readonly<Record<number, string>> = {
  400: 'The request does not fit',
  401: 'Not from a device that has joined; only over the network',
  403: 'Not from a page of this bench, or not for the role of this device',
  404: 'There is no such thing',
  409: 'A rule of the job refuses it',
  413: 'Too large',
  415: 'A type of content that is not taken here',
  429: 'Too many at once; only over the network',
  500: 'Not expected',
  503: 'Not on this bench',
  502: 'An instrument does not answer',
};

/** The refusals of a route, by status, each with an example of what the server sends. Foreign pages and the unexpected come by themselves. */
export function refusals(...codes: readonly AnsweredCode[]) {
  const all: readonly AnsweredCode[] = [...codes, 'no-device-key', 'foreign-host', 'role-too-small', 'too-many-requests', 'unexpected'];
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

/** The troubles with backups, which each sentence words with the folder or file concerned. */
export const backupRefusal = {
  409: {
    description: 'The backup or its folder cannot be used',
    content: {
      'application/json': {
        schema: Problem,
        examples: {
          'backup-folder-gone': {
            value: problemOfBackup({ code: 'backup-folder-gone', where: '/media/stick', detail: 'there is no such folder' }),
          },
        },
      },
    },
  },
};

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
