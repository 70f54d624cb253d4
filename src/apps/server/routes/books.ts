import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { strToU8, zipSync } from 'fflate';
import { Day } from '../../../bench/events/index.ts';
import { BreakdownView, TaxView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { answers, refusals } from '../responses.ts';

const Period = z
  .object({
    from: Day.meta({ description: 'First day', example: '2026-01-01' }),
    to: Day.meta({ description: 'Last day', example: '2026-12-31' }),
  })
  .refine(({ from, to }) => from <= to, { path: ['to'], error: 'must not be before the first day' })
  .refine(({ from, to }) => Number(to.slice(0, 4)) - Number(from.slice(0, 4)) < 100, {
    path: ['to'],
    error: 'must be within a hundred years',
  });

const taxRoute = createRoute({
  method: 'get',
  path: '/api/books/tax',
  summary: 'The stock book of a period, and what the rules of tax that are in use say of it',
  request: { query: Period },
  responses: { ...answers(TaxView, 'The reckoning'), ...refusals('bad-input') },
});
const packRoute = createRoute({
  method: 'get',
  path: '/api/books/pack',
  summary: 'The books of a period in one file: stock book, journal, months and units as CSV',
  request: { query: Period },
  responses: {
    200: { description: 'A ZIP archive', content: { 'application/zip': { schema: { type: 'string', format: 'binary' } } } },
    ...refusals('bad-input'),
  },
});
const breakdownRoute = createRoute({
  method: 'get',
  path: '/api/books/breakdown',
  summary: 'Profit and hours by model, seller and remedy, and estimates against outcomes',
  responses: { ...answers(BreakdownView, 'The breakdown'), ...refusals() },
});

/** The books of a period, for the person and for whoever checks them. */
export const bookRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(breakdownRoute, (c) => c.json(bench.breakdown(), 200))
    .openapi(taxRoute, (c) => c.json(bench.tax(c.req.valid('query')), 200))
    .openapi(packRoute, (c) => {
      const period = c.req.valid('query');
      const files = [...bench.yearPack(period)].map(([name, text]) => [name, strToU8(text)] as const);
      return c.body(zipSync(Object.fromEntries(files)), 200, {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="books-${period.from}-to-${period.to}.zip"`,
      });
    });
