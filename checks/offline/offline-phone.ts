import sharp from 'sharp';
import { stamp } from '../../src/apps/web/actions/stamp.ts';
import { createOutbox, type Outbox, type Parcel } from '../../src/apps/web/offline/outbox.ts';
import { photoParcels } from '../../src/apps/web/offline/photo-parcels.ts';
import { sendContent } from '../../src/apps/web/offline/send-content.ts';
import { memoryParcels } from '../../src/apps/web/offline/testing/memory-parcels.ts';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openApp, type OpenedApp } from '../interface/open-app.ts';

export interface OfflineResult {
  readonly events: number;
  readonly photos: number;
  /** Requests that got lost, and answers that got lost after the bench had done its work. */
  readonly lostRequests: number;
  readonly lostAnswers: number;
  /** Events that are not in the log exactly once and in the order of noting, and photos that are not kept. */
  readonly errors: number;
}

const LOT = {
  kind: 'lot-bought',
  body: {
    lot_id: 'lot-1',
    title: 'Two dead Terns',
    seller: 'Harbour Clearance',
    price_minor: 2400,
    currency: 'GBP',
    items: [{ item_id: 'blue', name: 'Blue Tern', model_id: 'tern-tn10', expected_value_minor: 2000 }],
  },
};

/** A phone notes and photographs with the network gone, then delivers over one that loses requests and answers and while its page is reloaded. */
export async function offlinePhone(seed: string, events: number, photos: number): Promise<OfflineResult> {
  const random = randomStream(seed);
  const opened = await openApp();
  const network = poorNetwork(opened, random);
  try {
    opened.bench.record([LOT]);
    const store = memoryParcels();
    const reload = async (): Promise<Outbox> => {
      const outbox = createOutbox(store, sendContent);
      await outbox.load();
      return outbox;
    };
    const noted = await workOffline(await reload(), random, events, photos);
    for (let outbox = await reload(); !(await outbox.deliver());) outbox = random() < 0.2 ? await reload() : outbox;
    const stored = opened.bench.log(1, events + 100).map(({ event }) => event.id);
    const missing = await missingPhotos(opened, noted.hashes);
    const places = Math.max(stored.length, noted.ids.length);
    const wrong = Array.from({ length: places }, (_, i) => stored[i] !== noted.ids[i]).filter(Boolean).length;
    return { events: noted.ids.length, photos: noted.hashes.length, ...network.lost, errors: wrong + missing };
  } finally {
    network.restore();
    await opened.close();
  }
}

/** The pages' way to the bench, which loses one request in six and one answer in six. */
function poorNetwork(
  { app }: OpenedApp,
  random: RandomStream,
): { readonly lost: { lostRequests: number; lostAnswers: number }; restore(): void } {
  const lost = { lostRequests: 0, lostAnswers: 0 };
  const real = globalThis.fetch;
  globalThis.fetch = async (path, init) => {
    if (random() < 1 / 6) {
      lost.lostRequests++;
      throw new TypeError('the network is gone');
    }
    const response = await app.request(`http://127.0.0.1:4780${String(path)}`, init);
    if (random() < 1 / 6) {
      lost.lostAnswers++;
      throw new TypeError('the network is gone');
    }
    return response;
  };
  return { lost, restore: () => void (globalThis.fetch = real) };
}

async function workOffline(outbox: Outbox, random: RandomStream, events: number, photos: number) {
  const { now, newId } = systemClock();
  const [ids, hashes]: [string[], string[]] = [[], []];
  const keep = async (drafts: Parameters<typeof stamp>[0], before: readonly Pick<Parcel, 'said' | 'content'>[] = []): Promise<void> => {
    const stamped = stamp(drafts, { newId, now, device: 'phone' });
    ids.push(...stamped.map(({ id }) => id));
    await outbox.keep([...before, { said: 'a gesture', content: { what: 'events', events: stamped } }]);
  };
  for (let n = 0; n < photos; n++) {
    const background = { r: n, g: Math.floor(random() * 256), b: Math.floor(random() * 256) };
    const picture = await sharp({ create: { width: 60, height: 40, channels: 3, background } })
      .jpeg()
      .toBuffer();
    const taken = await photoParcels([new File([new Uint8Array(picture)], `${n}.jpg`, { type: 'image/jpeg' })]);
    hashes.push(...taken.hashes);
    await keep([{ kind: 'photo-taken', body: { item_id: 'blue', photo: taken.hashes[0]!, side: 'front' } }], taken.parcels);
    const between = Math.floor((events - photos) / photos) + (n < (events - photos) % photos ? 1 : 0);
    for (let i = 0; i < between; i++) await keep([{ kind: 'note-written', body: { item_id: 'blue', text: `note ${i} after photo ${n}` } }]);
  }
  return { ids, hashes };
}

async function missingPhotos({ app }: OpenedApp, hashes: readonly string[]): Promise<number> {
  const answers = await Promise.all(hashes.map((hash) => app.request(`http://127.0.0.1:4780/photos/${hash}/original`)));
  return answers.filter(({ status }) => status !== 200).length;
}
