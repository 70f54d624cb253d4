import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { LABEL_SHEETS, labelsOf, layoutLabels, sheetOf } from '../../../bench/labels/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { refusals } from '../responses.ts';

const names = (what: string) =>
  z
    .string()
    .max(40_000)
    .default('')
    .meta({ description: `${what}, with commas between; or all that are at hand: all`, example: 'all' });

const Query = z
  .object({
    items: names('Ids or stock numbers of items'),
    bags: names('Ids of bags'),
    sheet: z
      .enum(LABEL_SHEETS.map(({ id }) => id))
      .default(LABEL_SHEETS[0]!.id)
      .meta({ description: 'Paper, and how many labels are on it' }),
    skip: z.coerce.number().int().min(0).max(200).default(0).openapi({ type: 'integer', minimum: 0, maximum: 200, default: 0 }),
    address: z
      .url({ protocol: /^https?$/ })
      .max(200)
      .optional()
      .meta({ description: 'Where the codes open the bench; else where the network reaches it, or where this request came in' }),
  })
  .refine(({ items, bags }) => items !== '' || bags !== '', { path: ['items'], error: 'names nothing, and neither does bags' });

const route = createRoute({
  method: 'get',
  path: '/api/labels',
  summary: 'Labels with codes that open a unit or a bag, as a PDF at true scale',
  request: { query: Query },
  responses: {
    200: { description: 'The sheets', content: { 'application/pdf': { schema: { type: 'string', format: 'binary' } } } },
    ...refusals('bad-input', 'no-such-item', 'no-such-bag'),
  },
});

const wanted = (text: string): readonly string[] | 'all' => (text === 'all' ? 'all' : text.split(',').filter((name) => name.trim() !== ''));

/** Labels for paper. */
export const labelRoutes = ({ bench, printer, network }: AppParts) =>
  new OpenAPIHono().openapi(route, async (c) => {
    const { items, bags, sheet, skip, address } = c.req.valid('query');
    const link = (address ?? network()?.urls[0] ?? new URL(c.req.url).origin).replace(/\/+$/, '');
    const made = labelsOf(bench.state(), bench.model, { items: wanted(items), bags: wanted(bags), address: link });
    if (!made.ok) throw refuse(made.code, { where: made.code === 'no-such-bag' ? 'bags' : 'items', detail: made.name });
    const pdf = await printer.labels(layoutLabels(made.labels, sheetOf(sheet)!, skip));
    return c.body(new Uint8Array(pdf), 200, {
      'content-type': 'application/pdf',
      'content-disposition': 'inline; filename="labels.pdf"',
      'cache-control': 'no-store',
    });
  });
