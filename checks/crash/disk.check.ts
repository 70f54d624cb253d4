import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { randomStream } from '../../src/core/numeric/index.ts';
import { startServer, type ServerProcess } from '../figures/server-process.ts';
import { everyStored, type SentEvent } from './clients.ts';
import { integrity } from './kill-rounds.ts';
import { halfFiles, somePicture } from './photo-clients.ts';
import { smallDisk, type SmallDisk } from './small-disk.ts';

const probe = smallDisk(1);
probe?.remove();

let disk: SmallDisk;
let server: ServerProcess;
beforeEach(() => {
  if (probe) disk = smallDisk(24)!;
});
afterEach(async () => {
  if (!probe) return;
  await server?.stop();
  disk.remove();
});

const note = (n: number, letters: number): SentEvent => ({
  id: `019f0000-0000-7000-8000-${String(n).padStart(12, '0')}`,
  kind: 'note-written',
  body: { text: 'x'.repeat(letters) },
});
const post = (events: readonly SentEvent[]): Promise<Response> =>
  fetch(`${server.url}/api/events`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ events }) });
const problemOf = async (response: Response): Promise<{ code: string; message: string }> =>
  (await response.json()) as { code: string; message: string };

/** Sends notes until the bench takes no more; the ids that it acknowledged, and the answer that it refused with. */
async function fillWithNotes(): Promise<{ readonly ids: string[]; readonly refusal: Response }> {
  const ids: string[] = [];
  for (let n = 1; ; n++) {
    const events = Array.from({ length: 20 }, (_, i) => note(n * 100 + i, 4000));
    const response = await post(events);
    if (!response.ok) return { ids, refusal: response };
    ids.push(...events.map(({ id }) => id));
  }
}

async function sendPictureUntilRefused(): Promise<Response> {
  const random = randomStream('pictures for a full disk');
  for (let n = 0; ; n++) {
    const form = new FormData();
    form.append('photos', new File([new Uint8Array(await somePicture(random, n))], `${n}.jpg`));
    const response = await fetch(`${server.url}/api/photos`, { method: 'POST', body: form });
    if (!response.ok) return response;
    await response.arrayBuffer();
  }
}

describe.skipIf(!probe)('a full disk (skipped where no small file system can be mounted)', () => {
  it('refuses events with what to do, keeps all that were acknowledged, and goes on when there is room', async () => {
    server = await startServer(disk.dir, ['--empty']);
    const { ids, refusal } = await fillWithNotes();
    expect(refusal.status).toBe(503);
    expect((await problemOf(refusal)).message).toMatch(/disk is full.*Make room on the disk, then try again\.$/s);
    expect(ids.length).toBeGreaterThan(100);
    expect(await everyStored(server.url)).toEqual(ids);
    disk.resize(64);
    expect((await post([note(1, 10)])).status).toBe(200);
    expect(await everyStored(server.url)).toEqual([...ids, note(1, 0).id]);
    await server.stop();
    expect(integrity(join(disk.dir, 'salvor.sqlite'))).toBe('ok');
  });

  it('refuses photos with what to do, and leaves no half file', async () => {
    server = await startServer(disk.dir, ['--empty']);
    const refusal = await sendPictureUntilRefused();
    expect([refusal.status, await problemOf(refusal)]).toEqual([
      503,
      { code: 'disk-full', message: expect.stringMatching(/full.*Make room/) },
    ]);
    await server.stop();
    expect(halfFiles(join(disk.dir, 'photos'))).toEqual([]);
  });
});

describe.skipIf(!probe)('a disk that can only be read', () => {
  it.each([
    ['a new bench', false],
    ['a bench that is there', true],
  ])('is said before anything starts, of %s', async (_name, isThere) => {
    if (isThere) await (await startServer(disk.dir, ['--empty'])).stop();
    disk.setReadOnly(true);
    const started = startServer(disk.dir, ['--empty']);
    await expect(started).rejects.toThrow(/ended \(3\)/);
    await expect(started).rejects.toThrow(
      /(?:Check that the folder (?:is there and )?may be written[^.]*|can only be read\. Allow it to be written, then try again)\.\n$/,
    );
    disk.setReadOnly(false);
    server = await startServer(disk.dir, ['--empty']);
    expect((await post([note(1, 10)])).status).toBe(200);
  });
});
