import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readFolder, writeBundle } from '../../src/edges/bundle/index.ts';
import { noPostgres, startPostgres } from './postgres-server.ts';

const ROOT = join(import.meta.dirname, '../..');
const reason = noPostgres();

async function salvor(...argv: readonly string[]): Promise<Record<string, unknown>> {
  const child = spawn(process.execPath, [join(ROOT, 'bin/salvor.mjs'), '--json', ...argv], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
  await once(child, 'close');
  return JSON.parse(said) as Record<string, unknown>;
}

it.skipIf(reason !== null)(
  `the demo bench goes into a database and back with one hash${reason ? ` (left out: ${reason})` : ''}`,
  async () => {
    const dir = mkdtempSync(join(tmpdir(), 'salvor-move-'));
    const server = await startPostgres(['fsync=off']);
    try {
      const url = await server.newDatabase();
      const [first, second, bundle] = ['first', 'second', 'bundle.zip'].map((name) => join(dir, name));
      const demo = await readFolder(join(ROOT, 'demo'));
      if (!demo.ok) throw new Error(demo.detail);
      writeFileSync(bundle!, await writeBundle(demo.events, { list: async () => [] } as never));
      await salvor('--home', first!, 'import', bundle!);
      const there = await salvor('--home', first!, 'move', '--to', url);
      expect(there).toEqual({ events: demo.events.length, digest: expect.stringMatching(/^[0-9a-f]{64}$/) });
      expect(await salvor('--home', second!, 'move', '--from', url)).toEqual(there);
      expect(await salvor('--home', first!, 'move', '--to', url)).toMatchObject({ code: 'not-empty' });
    } finally {
      await server.stop();
      rmSync(dir, { recursive: true, force: true });
    }
  },
);
