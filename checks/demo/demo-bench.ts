import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Bench } from '../../src/bench/bench.ts';
import type { BenchEvent, EventOf, Kind } from '../../src/bench/events/index.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { memoryStore } from '../../src/bench/testing/memory-store.ts';
import { loadModels } from '../../src/edges/models/index.ts';

export const ROOT = join(import.meta.dirname, '../..');
export const DEMO = join(ROOT, 'demo');

/** An empty bench in memory with the models that ship. */
export async function emptyBench(): Promise<Bench> {
  const { models } = await loadModels(join(ROOT, 'models'));
  const clock = { now: () => new Date('2026-10-08T08:00:00Z'), newId: () => '' };
  return openBench({ store: memoryStore(), models, clock, device: 'check', version: 'check' });
}

export const demoEvents = (): BenchEvent[] =>
  readFileSync(join(DEMO, 'events.jsonl'), 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as BenchEvent);

/** The events of one kind. */
export const ofKind = <K extends Kind>(events: readonly BenchEvent[], kind: K): EventOf<K>[] =>
  events.filter((event) => event.kind === kind) as unknown as EventOf<K>[];
