import { OpenAPIHono, createRoute } from '@hono/zod-openapi';
import { streamSSE } from 'hono/streaming';
import type { BoardShelf } from '../../../bench/boards/index.ts';
import type { LogWatcher } from '../log-watcher.ts';
import { refusals } from '../responses.ts';

const HEARTBEAT_MS = 15_000;

const route = createRoute({
  method: 'get',
  path: '/api/changes',
  summary:
    'Server-sent events: `seq` with the place of the last event, at once and whenever the log has grown; `boards` when more of a circuit is known',
  responses: {
    200: {
      description: 'A stream that stays open; a comment line every 15 seconds keeps it alive',
      content: { 'text/event-stream': { schema: { type: 'string' }, example: 'event: seq\ndata: 42\nid: 42\n\n' } },
    },
    ...refusals(),
  },
});

/** Tells open pages that the log has grown, also by another process on the same folder. */
export const changeRoutes = (watcher: LogWatcher, boards?: BoardShelf) =>
  new OpenAPIHono().openapi(route, (c) =>
    streamSSE(c, async (stream) => {
      const tell = (seq: number): void => void stream.writeSSE({ event: 'seq', data: String(seq), id: String(seq) });
      const leave = watcher.watch(tell);
      const ignore = boards?.watch(() => void stream.writeSSE({ event: 'boards', data: '' }));
      const heartbeat = setInterval(() => void stream.write(': still here\n\n'), HEARTBEAT_MS);
      await new Promise<void>((resolve) => {
        stream.onAbort(resolve);
        watcher.onClose(resolve);
      });
      clearInterval(heartbeat);
      leave();
      ignore?.();
    }),
  );
