import type { MiddlewareHandler } from 'hono';
import type { BenchDoor } from '../../bench/bench.ts';
import { DATA } from './admission.ts';

/** Every answer about the bench knows all that any process had acknowledged when it was asked for. */
export const freshened =
  ({ fresh }: BenchDoor): MiddlewareHandler =>
  async (c, next) => {
    if (c.req.method === 'GET' && DATA.test(c.req.path)) await fresh();
    await next();
  };
