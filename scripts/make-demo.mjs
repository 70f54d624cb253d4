import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'yaml';
import { ROOT } from './run.mjs';
import { tellStory } from './demo-story/tell-story.mjs';
import { openBench } from '../dist/bench/index.js';
import { bundleFiles } from '../dist/edges/bundle/bundle.js';
import { loadModels } from '../dist/edges/models/load-models.js';
import { openSqliteStore } from '../dist/edges/store/sqlite-store.js';
import { seededClock } from '../dist/apps/cli/demo-walk/seeded-clock.js';

/**
 * Makes demo/events.jsonl and demo/manifest.json out of demo/story.yaml and demo/photos: every line goes through the rules of an empty bench, with ids that
 * follow from its time and a seed, so that the same story gives the same bytes. `--check` writes nothing and says
 * whether the file on the disk is the one that the story gives.
 */
const DEMO = join(ROOT, 'demo');

export async function eventsOfStory() {
  const story = parse(readFileSync(join(DEMO, 'story.yaml'), 'utf8'));
  const photos = new Map(Object.entries(JSON.parse(readFileSync(join(DEMO, 'photo-names.json'), 'utf8'))));
  const { models, problems } = await loadModels(join(ROOT, 'models'));
  if (problems.length > 0) throw new Error(`${problems[0].file}:${problems[0].line} ${problems[0].field} ${problems[0].message}`);
  const clock = seededClock(new Date(`${story.bench.start}T08:00:00Z`), 'salvor demo');
  const aside = mkdtempSync(join(tmpdir(), 'salvor-story-'));
  const store = openSqliteStore(join(aside, 'story.sqlite'));
  try {
    const bench = openBench({ store, models, clock, device: 'demo', version: 'demo' });
    tellStory(story, { bench, clock, models, photos });
    const events = bench.log(0, Number.MAX_SAFE_INTEGER).map(({ event }) => event);
    return { items: bench.state().items.size, events, text: events.map((event) => `${JSON.stringify(event)}\n`).join('') };
  } finally {
    store.close();
    rmSync(aside, { recursive: true, force: true });
  }
}

const photos = () => readdirSync(join(DEMO, 'photos')).map((name) => ({ name, bytes: readFileSync(join(DEMO, 'photos', name)) }));

if (process.argv[1] === import.meta.filename) {
  const { items, events, text } = await eventsOfStory();
  if (process.argv.includes('--check')) {
    const same = readFileSync(join(DEMO, 'events.jsonl'), 'utf8') === text;
    console.log(same ? 'demo/events.jsonl is up to date.' : 'demo/events.jsonl differs from its story: run node scripts/make-demo.mjs.');
    process.exitCode = same ? 0 : 1;
  } else {
    const files = bundleFiles(events, photos());
    for (const name of ['events.jsonl', 'manifest.json']) writeFileSync(join(DEMO, name), files.get(name));
    console.log(`${events.length} events, ${items} items.`);
  }
}
