import { OpenAPIHono, createRoute } from '@hono/zod-openapi';
import { BenchView, BooksView, CalibrationView, DrawerView, LearnedView, PileView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { answers, refusals } from '../responses.ts';

const benchRoute = createRoute({
  method: 'get',
  path: '/api/bench',
  summary: 'The bench itself: its settings, and how much is on it',
  responses: { ...answers(BenchView, 'The bench'), ...refusals() },
});
const pileRoute = createRoute({
  method: 'get',
  path: '/api/pile',
  summary: 'Everything owned and unfinished, with what to do with each, best first',
  responses: { ...answers(PileView, 'The pile and its plan'), ...refusals() },
});
const drawerRoute = createRoute({
  method: 'get',
  path: '/api/drawer',
  summary: 'Loose assemblies, bags of parts, and orders',
  responses: { ...answers(DrawerView, 'The drawer'), ...refusals() },
});
const booksRoute = createRoute({
  method: 'get',
  path: '/api/books',
  summary: 'The money of each unit and of each month',
  responses: { ...answers(BooksView, 'The books'), ...refusals() },
});
const learnedRoute = createRoute({
  method: 'get',
  path: '/api/learned',
  summary: 'What was learned of remedies, faults and sellers: before, now, and from which jobs',
  responses: { ...answers(LearnedView, 'The learned numbers'), ...refusals() },
});

const calibrationRoute = createRoute({
  method: 'get',
  path: '/api/calibration',
  summary:
    'What was thought against what came: reliability, estimates, best and worst decisions; ask again while fewer are judged than there are',
  responses: { ...answers(CalibrationView, 'The advice held against what came'), ...refusals() },
});

/** The bench answers one question at a time, so none may take long, ms. */
const SLICE_MS = 400;

/** True once that long has passed since it was first asked. */
function until(ms: number): () => boolean {
  let end: number | undefined;
  return () => performance.now() > (end ??= performance.now() + ms);
}

/** The places of the bench that are one answer each. */
export const viewRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(benchRoute, (c) => c.json(bench.overview(), 200))
    .openapi(pileRoute, (c) => c.json(bench.pile(), 200))
    .openapi(drawerRoute, (c) => c.json(bench.drawer(), 200))
    .openapi(booksRoute, (c) => c.json(bench.books(), 200))
    .openapi(learnedRoute, (c) => c.json(bench.learned(), 200))
    .openapi(calibrationRoute, (c) => c.json(bench.calibration(until(SLICE_MS)), 200));
