import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { openBench } from '../../../bench/open-bench.ts';
import { loadModels } from '../../../edges/models/load-models.ts';
import { openSqliteStore } from '../../../edges/store/sqlite-store.ts';
import { seededClock } from './seeded-clock.ts';
import { walk } from './walk.ts';

const ROOT = join(import.meta.dirname, '../../../..');
const START = new Date('2026-05-04T09:00:00Z');

/** Walks on a bench in a temporary folder, which is gone afterwards. */
async function main(seed: string): Promise<void> {
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string };
  const folder = mkdtempSync(join(tmpdir(), 'salvor-walk-'));
  const store = openSqliteStore(join(folder, 'walk.sqlite'));
  try {
    const { models } = await loadModels(join(ROOT, 'models'));
    const clock = seededClock(START, seed);
    const bench = openBench({ store, models, clock, device: 'walk', version });
    walk({ bench, models, clock, seed, say: console.log });
  } finally {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const { values } = parseArgs({ options: { seed: { type: 'string', default: 'gull' } } });
await main(values.seed);
