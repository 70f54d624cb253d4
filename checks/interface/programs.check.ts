import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';

const ROOT = join(import.meta.dirname, '../..');

let folder: ReturnType<typeof temporaryHome>;
let server: ServerProcess;
beforeEach(async () => {
  folder = temporaryHome();
  server = await startServer(folder.home, ['--empty']);
});
afterEach(async () => {
  await server.stop();
  folder.remove();
});

interface Run {
  readonly code: number | null;
  readonly said: string;
}

/** Runs a program of the checkout to its end. */
function run(file: string, ...args: readonly string[]): Promise<Run> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(ROOT, file), ...args]);
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => void (said += chunk.toString()));
    child.on('close', (code) => resolve({ code, said }));
  });
}

const note = async (url: string, text: string): Promise<number> => {
  const body = JSON.stringify({ events: [{ kind: 'note-written', body: { text } }] });
  const response = await fetch(`${url}/api/events`, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
  return ((await response.json()) as { stored: [{ seq: number }] }).stored[0].seq;
};

describe('the server as a program', () => {
  it('says where the bench is open when it is started on it again, and what to do when the port is another one’s', async () => {
    const port = new URL(server.url).port;
    const again = await run('dist/apps/server/main.js', '--home', folder.home, '--port', port);
    expect(again).toEqual({ code: 0, said: `Salvor is already open on this bench at ${server.url}/\n` });
    const other = temporaryHome();
    const elsewhere = await run('dist/apps/server/main.js', '--home', other.home, '--port', port, '--empty');
    other.remove();
    expect([elsewhere.code, elsewhere.said]).toEqual([
      1,
      expect.stringMatching(/Port \d+ is in use by a Salvor on another bench.*--port \d+/),
    ]);
  });

  it('says what is wrong with its arguments or its folder', async () => {
    expect(await run('dist/apps/server/main.js', '--port', 'x')).toMatchObject({ code: 2, said: expect.stringContaining('Usage:') });
    expect(await run('dist/apps/server/main.js', '--home', '/dev/null/bench')).toMatchObject({
      code: 3,
      said: expect.stringContaining('/dev/null/bench'),
    });
  });

  it('ends at once when it is asked to, though a page still watches', async () => {
    const watching = await fetch(`${server.url}/api/changes`);
    const reader = watching.body!.getReader();
    await reader.read();
    await server.stop();
    expect([server.child.exitCode, server.child.signalCode]).toEqual([0, null]);
    await reader.cancel().catch(() => undefined);
  });

  it('shares its folder with a second server: each takes events, and both know all of them in one order', async () => {
    const second = await startServer(folder.home, ['--empty']);
    try {
      const urls = [server.url, second.url];
      const seqs = await Promise.all(Array.from({ length: 40 }, (_, i) => note(urls[i % 2]!, `note ${i}`)));
      expect(seqs.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
      const logs = await Promise.all(urls.map(async (url) => (await fetch(`${url}/api/events`)).text()));
      expect(logs[0]).toBe(logs[1]);
    } finally {
      await second.stop();
    }
  });
});

describe('the command line beside a running server', () => {
  it('adds to the log, and whoever watches is told', async () => {
    const watching = await fetch(`${server.url}/api/changes`);
    const reader = watching.body!.getReader();
    const next = async (): Promise<string> => new TextDecoder().decode((await reader.read()).value);
    expect(await next()).toContain('data: 0');
    expect(await run('bin/salvor.mjs', 'add', 'note', 'from beside', '--home', folder.home)).toEqual({ code: 0, said: 'Noted.\n' });
    expect(await next()).toContain('data: 1');
    await reader.cancel();
  });
});
