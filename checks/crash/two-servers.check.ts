import { join } from 'node:path';
import { expect, it } from 'vitest';
import { randomStream } from '../../src/core/numeric/index.ts';
import { startServer, temporaryHome } from '../figures/server-process.ts';
import { acknowledge, everyStored, prepareItems, someEvents } from './clients.ts';
import { integrity } from './kill-rounds.ts';
import { halfFiles, keepPicture, missingPictures, somePicture } from './photo-clients.ts';

it('two servers on one folder take events and photos side by side, and both know all of them', async () => {
  const { home, remove } = temporaryHome();
  const servers = [await startServer(home, ['--empty']), await startServer(home, ['--empty'])];
  try {
    const prepared = await prepareItems(servers[0]!.url);
    const events = someEvents(prepared, 200);
    const random = randomStream('two servers');
    const pictures = await Promise.all([0, 1, 2].map((n) => somePicture(random, n)));
    await Promise.all(
      servers.map(async ({ url }, side) => {
        for (const [i, event] of events.entries()) if (i % 2 === side || i % 10 === 0) expect(await acknowledge(url, event)).toBe(true);
      }),
    );
    const hashes = await Promise.all(servers.map(({ url }) => Promise.all(pictures.map((bytes) => keepPicture(url, bytes)))));
    expect(hashes[0]).toEqual(hashes[1]);
    for (const { url } of servers) {
      expect((await everyStored(url)).filter((id) => events.some((event) => event.id === id)).toSorted()).toEqual(
        events.map(({ id }) => id).toSorted(),
      );
      expect(await missingPictures(url, hashes[0]!.map(String))).toEqual([]);
    }
    const digests = await Promise.all(servers.map(async ({ url }) => (await fetch(`${url}/api/bundle`)).headers.get('x-salvor-digest')));
    expect(digests[0]).toMatch(/^[0-9a-f]{64}$/);
    expect(digests[1]).toBe(digests[0]);
  } finally {
    await Promise.all(servers.map((server) => server.stop()));
  }
  expect(halfFiles(join(home, 'photos'))).toEqual([]);
  expect(integrity(join(home, 'salvor.sqlite'))).toBe('ok');
  remove();
});
