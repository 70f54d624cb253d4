import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { PhotoBytes } from '../../../bench/ports.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { refusals } from '../responses.ts';

const params = z.object({ item: z.string().max(80).meta({ description: 'Its id or stock number', example: '7' }) });
const html = { 'text/html': { schema: { type: 'string' as const } } };
const pdf = { 'application/pdf': { schema: { type: 'string' as const, format: 'binary' } } };
const flag = (description: string) => z.enum(['yes', 'no']).default('no').meta({ description });

const sheetRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}/report.pdf',
  summary: 'The condition report of a unit as a PDF on A4',
  request: { params },
  responses: { 200: { description: 'The report', content: pdf }, ...refusals('no-such-item') },
});
const pageRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}/report.html',
  summary: 'The condition report of a unit as one page that holds its photos',
  request: { params },
  responses: { 200: { description: 'The report', content: html }, ...refusals('no-such-item') },
});
const storyRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}/story.html',
  summary: 'The story of a unit as one page that holds its photos; money, names and own words only where asked for',
  request: {
    params,
    query: z.object({
      money: flag('What it cost and brought'),
      persons: flag('Who sold it and who bought it'),
      words: flag('Notes, captions and remarks as they were typed'),
    }),
  },
  responses: { 200: { description: 'The story', content: html }, ...refusals('bad-input', 'no-such-item') },
});

/** Pages and sheets about a unit for others. */
export const reportRoutes = ({ bench, photos, printer, network }: AppParts) => {
  const photo: PhotoBytes = (hash) => photos.get(hash, 'view');
  const reportOf = (c: Context, item: string) => {
    // Where the network reaches the bench, as labels do; else where this request came in.
    const base = network()?.urls[0] ?? new URL(c.req.url).origin;
    const report = bench.conditionReport(item, (id) => `${base.replace(/\/+$/, '')}/bench/${encodeURIComponent(id)}`);
    if (!report) throw refuse('no-such-item', { where: 'item', detail: item });
    return report;
  };
  return new OpenAPIHono()
    .openapi(sheetRoute, async (c) => {
      const bytes = await printer.reportSheet(reportOf(c, c.req.valid('param').item), photo);
      return c.body(new Uint8Array(bytes), 200, { 'content-type': 'application/pdf', 'cache-control': 'no-store' });
    })
    .openapi(pageRoute, async (c) => {
      const text = await printer.reportPage(reportOf(c, c.req.valid('param').item), photo);
      return c.body(text, 200, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' });
    })
    .openapi(storyRoute, async (c) => {
      const { item } = c.req.valid('param');
      const { money, persons, words } = c.req.valid('query');
      const story = bench.story(item, { money: money === 'yes', persons: persons === 'yes', words: words === 'yes' });
      if (!story) throw refuse('no-such-item', { where: 'item', detail: item });
      return c.body(await printer.storyPage(story, photo), 200, {
        'content-type': 'text/html; charset=utf-8',
        'cache-control': 'no-store',
      });
    });
};
