import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import type { AppParts } from '../app-parts.ts';
import { answers, refusals } from '../responses.ts';

const Boards = z
  .object({
    boards: z.array(
      z.object({
        model_id: Id,
        confirmed: z.array(z.string()).meta({ description: 'Faults that stand in it, because they were seen' }),
        done: z.number().int(),
        rows: z.number().int(),
        stage: z.enum(['waiting', 'computing', 'ready', 'stopped', 'failed']),
      }),
    ),
  })
  .meta({ id: 'Boards' });

const listRoute = createRoute({
  method: 'get',
  path: '/api/boards',
  summary: 'What is being computed of the circuits of models, and how far it is',
  responses: { ...answers(Boards, 'The circuits that were asked for'), ...refusals() },
});
const stopRoute = createRoute({
  method: 'post',
  path: '/api/boards/stop',
  summary: 'Computes nothing more of circuits for now; what is known stays',
  responses: { ...answers(Boards, 'How far each is'), ...refusals() },
});
const goRoute = createRoute({
  method: 'post',
  path: '/api/boards/go',
  summary: 'Goes on computing what was stopped, from where it was, and tries again what failed',
  responses: { ...answers(Boards, 'How far each is'), ...refusals() },
});

/** Progress of the work in the background, and its switch. */
export const boardRoutes = ({ boards }: AppParts) => {
  const now = (): z.output<typeof Boards> => ({
    boards: (boards?.progress() ?? []).map(({ modelId, confirmed, done, rows, stage }) => ({
      model_id: modelId,
      confirmed: [...confirmed],
      done,
      rows,
      stage,
    })),
  });
  return new OpenAPIHono()
    .openapi(listRoute, (c) => c.json(now(), 200))
    .openapi(stopRoute, (c) => {
      boards?.stop();
      return c.json(now(), 200);
    })
    .openapi(goRoute, (c) => {
      boards?.go();
      return c.json(now(), 200);
    });
};
