import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { answers } from './responses.ts';

const route = createRoute({
  method: 'get',
  path: '/openapi.json',
  summary: 'This description, made from the schemas that check every request',
  responses: answers(z.looseObject({ openapi: z.string(), paths: z.record(z.string(), z.unknown()) }), 'An OpenAPI 3.1 document'),
});

/** The description of every route of `app`. */
export const describeInterface = (app: OpenAPIHono, version: string): OpenAPIHono => {
  const info = {
    title: 'Salvor',
    version,
    description:
      'The open interface of a bench. Money is whole minor units (pennies); times are UTC; every refusal is a Problem with a sentence that says what to do next. docs/interface.md walks through it.',
  };
  const describe = () => app.getOpenAPI31Document({ openapi: '3.1.0', info, servers: [{ url: 'http://127.0.0.1:4780' }] });
  let made: ReturnType<typeof describe> | undefined;
  return new OpenAPIHono().openapi(route, (c) => c.json((made ??= describe()) as never, 200));
};
