import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { hostileBundles } from './hostile-bundles.ts';
import { hostileRequests } from './hostile-events.ts';
import { hostileModelBundles } from './hostile-model-bundles.ts';
import { hostilePhotos, type Hostile } from './hostile-photos.ts';

export interface Met {
  readonly name: string;
  /** What was wrong with how the bench met it; null where it refused it with a sentence. */
  readonly fault: string | null;
  readonly ms: number;
}

export interface CorpusResult {
  readonly met: readonly Met[];
  /** What was written that should not have been. */
  readonly written: readonly string[];
  /** Most memory that the server took in all, in MB. */
  readonly peakMb: number;
}

const TOO_LONG_MS = 20_000;

/** Sends everything hostile that can be sent to a running server, and looks at what it answered, wrote and took of the memory. */
export async function sendCorpus(seed: string): Promise<CorpusResult> {
  const [photos, bundles] = [await hostilePhotos(seed), hostileBundles()];
  const { home, remove } = temporaryHome();
  const server = await startServer(home, ['--empty']);
  const before = filesBelow(home);
  try {
    const met: Met[] = [];
    for (const photo of photos) met.push(await meet(`photo ${photo.name}`, () => sendPhoto(server, photo)));
    for (const { name, bytes } of bundles) met.push(await meet(`bundle: ${name}`, () => send(server, 'bundle', bytes, 'application/zip')));
    for (const { name, bytes } of hostileModelBundles())
      met.push(await meet(`model bundle: ${name}`, () => send(server, 'model-bundle', bytes, 'application/zip')));
    for (const { name, text } of hostileRequests())
      met.push(await meet(`request: ${name}`, () => send(server, 'events', text, 'application/json')));
    const { events } = (await (await fetch(`${server.url}/api/bench`)).json()) as { events: number };
    const written = filesBelow(home).filter((name) => !before.includes(name));
    return { met, written: [...written, ...(events > 0 ? [`${events} events`] : [])], peakMb: peakMb(server.child.pid!) };
  } finally {
    await server.stop();
    remove();
  }
}

interface Answer {
  readonly status: number;
  readonly message: string;
}

async function meet(name: string, ask: () => Promise<Answer>): Promise<Met> {
  const start = performance.now();
  const { status, message } = await ask().catch((error: unknown) => ({ status: 500, message: `no answer: ${String(error)}` }));
  const ms = performance.now() - start;
  const isSentence = /^\S.{15,}\.$/s.test(message);
  if (status < 400) return { name, fault: `was taken (${status})`, ms };
  if (status >= 500) return { name, fault: `broke the server (${status}: ${message})`, ms };
  if (!isSentence) return { name, fault: `was refused without a sentence ("${message}")`, ms };
  return { name, fault: ms > TOO_LONG_MS ? `took ${Math.round(ms)} ms` : null, ms };
}

async function send(
  { url }: ServerProcess,
  where: 'bundle' | 'model-bundle' | 'events',
  body: Uint8Array | string,
  type: string,
): Promise<Answer> {
  const response = await fetch(`${url}/api/${where}`, { method: 'POST', headers: { 'content-type': type }, body: body as BodyInit });
  const { message = '' } = (await response.json()) as { message?: string };
  return { status: response.status, message };
}

async function sendPhoto({ url }: ServerProcess, { name, bytes }: Hostile): Promise<Answer> {
  const form = new FormData();
  form.append('photos', new File([new Uint8Array(bytes)], name));
  const response = await fetch(`${url}/api/photos`, { method: 'POST', body: form });
  const answer = (await response.json()) as { message?: string; results?: [{ ok: boolean; message?: string }] };
  if (!answer.results) return { status: response.status, message: answer.message ?? '' };
  const [result] = answer.results;
  return { status: result.ok ? 200 : 409, message: result.message ?? '' };
}

/** Files of the bench, those of the database and of what is computed apart: they change as the bench lives. */
const filesBelow = (home: string): string[] =>
  readdirSync(home, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.sqlite(?:-wal|-shm)?$|\.boards$|models-read\.json/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));

/** The high-water mark of a process, where the system tells it (proc(5), VmHWM); 0 where it does not. */
function peakMb(pid: number): number {
  try {
    return Math.round(Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024);
  } catch {
    return 0;
  }
}
