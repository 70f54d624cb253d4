import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ROOT } from './run.mjs';

/** `npm run plans:queries`: fills a PostgreSQL of its own as the study of trust does, and writes how it goes about each query. */
const load = async (file) => (await runnerImport(join(ROOT, 'checks', file), { logLevel: 'error', configFile: false })).module;
const { ITEMS, withMany } = await load('figures/trust-many.ts');
const { queryPlansPage } = await load('store/query-plans.ts');
const page = await withMany(console.error, ITEMS, (url) => queryPlansPage(url, ITEMS));
writeFileSync(join(ROOT, 'docs/query-plans.md'), page);
process.exit();
