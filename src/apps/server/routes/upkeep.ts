import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { AppParts } from '../app-parts.ts';
import type { Counters } from '../counters.ts';
import { answers, refusals } from '../responses.ts';

const JobNote = z
  .object({
    name: z.string(),
    at: z.string(),
    seconds: z.number(),
    error: z.string().nullable().meta({ description: 'Kind of its trouble' }),
  })
  .meta({ id: 'JobNote' });

const Upkeep = z
  .object({
    slow_answers: z
      .array(z.object({ route: z.string(), at: z.string(), seconds: z.number() }))
      .meta({ description: 'Answers that took longest since the start, the longest first' }),
    errors: z
      .array(z.object({ at: z.string(), sentence: z.string(), kind: z.string() }))
      .meta({ description: 'Errors that nobody expected, the newest first' }),
    jobs: z.object({ waiting: z.number().int(), slow: z.array(JobNote), failed: z.array(JobNote) }),
    memory_bytes: z.number().int(),
    uptime_seconds: z.number(),
  })
  .meta({ id: 'Upkeep', description: 'How a server does. Nothing of what is on the bench is in it' });

const route = createRoute({
  method: 'get',
  path: '/api/upkeep',
  summary: 'What was slow and what went wrong on this server, for its owner',
  responses: { ...answers(Upkeep, 'Of late'), ...refusals() },
});

/** Slow answers, slow and failed jobs, and errors of late. */
export const upkeepRoutes = ({ errors, jobs }: AppParts, counters: Counters) =>
  new OpenAPIHono().openapi(route, async (c) => {
    const { waiting, slow, failed } = await jobs.report();
    return c.json(
      {
        slow_answers: [...counters.slowest()],
        errors: [...errors()],
        jobs: { waiting, slow: [...slow], failed: [...failed] },
        memory_bytes: process.memoryUsage.rss(),
        uptime_seconds: Math.round(process.uptime()),
      },
      200,
    );
  });
