import { writeSync } from 'node:fs';
import { runnerImport } from 'vite';

/**
 * Appends to the store of a file until it is killed: `node append-until-killed.mjs <file> <name> <events a batch>`. Writes each id to
 * standard output after `append` has returned, and never before. The source is loaded as it stands, so that no build is needed.
 */
const [file, name, size] = process.argv.slice(2);
const load = async (path) => (await runnerImport(new URL(path, import.meta.url).pathname)).module;
const { openSqliteStore } = await load('../../src/edges/store/sqlite-store.ts');
const { systemClock } = await load('../../src/edges/clock.ts');

const clock = systemClock();
const at = clock.now().toISOString();
const event = (text) => ({ id: clock.newId(), at, device: name, version: 1, kind: 'note-written', body: { text } });
const row = (n, changedSeq) => ({
  id: `${name}-${n}`,
  number: n,
  name: `batch ${n}`,
  kind: 'unit',
  model_id: 'tern-tn10',
  status: 'bought',
  lot_id: null,
  lot_title: '',
  seller: '',
  place: '',
  slot: '',
  cost_minor: 0,
  grade: '',
  changed_at: at,
  changed_seq: changedSeq,
});

const store = openSqliteStore(file);
for (let n = 0; ; n++) {
  const events = Array.from({ length: Number(size) }, () => event(`${name}-${n}`));
  store.exclusively(() => store.append(events, { put: [row(n, store.lastSeq() + events.length)], remove: [], version: 1 }));
  for (const { id } of events) writeSync(1, `${id}\n`);
}
