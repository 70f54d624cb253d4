import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { AppParts } from '../app-parts.ts';
import { answers, refusals } from '../responses.ts';

const Health = z
  .object({
    name: z.literal('salvor'),
    version: z.string(),
    home: z.string().meta({ description: 'Folder of the bench that is served' }),
    seq: z.number().int().meta({ description: 'Place of the last event' }),
  })
  .meta({ id: 'Health' });

const route = createRoute({
  method: 'get',
  path: '/health',
  summary: 'Whether a Salvor answers here, and on which folder',
  responses: { ...answers(Health, 'It answers'), ...refusals() },
});

/** Says that the server is up and can read its log. */
export const healthRoutes = ({ bench, version, home }: AppParts) =>
  new OpenAPIHono().openapi(route, (c) => c.json({ name: 'salvor' as const, version, home, seq: bench.state().seq }, 200));
