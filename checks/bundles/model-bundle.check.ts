import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ModelBundle } from '../../src/bench/events/index.ts';
import { newFromBundle } from '../../src/bench/grow/take-model.ts';
import { modelBundles } from '../../src/edges/bundle/index.ts';
import { hostileModelBundles } from '../hostile/hostile-model-bundles.ts';
import { openApp, type OpenedApp } from '../interface/open-app.ts';

/** A model bundle as version 1 wrote it, unpacked, so that one can read it. */
const RELEASED = readFileSync(join(import.meta.dirname, 'models/reed-r1-version-1.json'));

let opened: OpenedApp;
beforeAll(async () => void (opened = await openApp()));
afterAll(() => opened.close());

const send = (bytes: Uint8Array): Promise<Response> =>
  Promise.resolve(
    opened.app.request('http://127.0.0.1:4780/api/model-bundle', {
      method: 'POST',
      headers: { 'content-type': 'application/zip' },
      body: new Uint8Array(bytes),
    }),
  );

describe('the bundle of a model', () => {
  it('of version 1 is still taken in, and makes the model that it made', async () => {
    const response = await send(zipSync({ 'model.json': RELEASED }));
    expect(response.status).toBe(200);
    const { bundle } = (await response.json()) as { bundle: ModelBundle };
    const recorded = opened.bench.record(newFromBundle('reed-r1', bundle));
    expect(recorded).toMatchObject({ ok: true });
    const { file, readings, version } = opened.bench.model('reed-r1')!;
    expect(version).toBe(2);
    expect(file).toMatchObject({ name: 'Reed R1', level: 1, prices: { working: 7000 }, cell: { volts: 3, chemistry: 'alkaline' } });
    expect(file.points.at(-1)).toMatchObject({ id: 'rail', mode: 'ohms', block: 'converter' });
    expect(file.blocks.map(({ id }) => id)).not.toContain('slot');
    expect(readings).toEqual([
      { board: 'Marsh Lane: good-1', point: 'rail', mode: 'ohms', value: 4700, revision: 'B' },
      { board: 'Quay Works: good-1', point: 'rail', mode: 'ohms', value: 4820, revision: '' },
    ]);
    const growth = opened.bench.growth('reed-r1')!.growth!;
    expect(growth).toMatchObject({ taken: [{ author: 'Marsh Lane', licence: 'CC BY 4.0' }], left_out: [] });
    expect(growth.parts.map(({ ref }) => ref)).toEqual(['R1', 'TP1']);
  });

  it('goes out with its photos and nothing that was not listed, and comes back as it was', async () => {
    const picture = await sharp({ create: { width: 64, height: 48, channels: 3, background: '#5a3' } })
      .png()
      .toBuffer();
    const form = new FormData();
    form.append('photos', new Blob([new Uint8Array(picture)]), 'front.png');
    const kept = await opened.app.request('http://127.0.0.1:4780/api/photos', { method: 'POST', body: form });
    const { results } = (await kept.json()) as { results: { photo: { hash: string } }[] };
    const photo = results[0]!.photo.hash;
    opened.bench.record([{ kind: 'model-photo-set', body: { model_id: 'reed-r1', side: 'front', photo } }]);
    const given = await opened.ask('/api/models/reed-r1/bundle?author=Ada');
    const bytes = new Uint8Array(await given.arrayBuffer());
    const files = unzipSync(bytes);
    expect(Object.keys(files).sort()).toEqual(['model.json', `photos/${photo}.png`]);
    expect(Buffer.from(files[`photos/${photo}.png`]!).equals(picture)).toBe(true);
    const { sharing } = (await (await opened.ask('/api/models/reed-r1/sharing?author=Ada')).json()) as {
      sharing: { leaves: string[]; photos: string[]; facts: unknown[] };
    };
    const out = JSON.parse(strFromU8(files['model.json']!)) as ModelBundle;
    expect(sharing.facts).toEqual(out.facts);
    expect(sharing.leaves).toHaveLength(out.facts.length + 4);
    expect(sharing.photos).toEqual([photo]);
    const back = await modelBundles.read(bytes);
    expect(back).toMatchObject({ ok: true, bundle: out, photos: [{ name: `${photo}.png` }] });
  });

  it('takes no photo that no fact names', async () => {
    const bundle = JSON.parse(RELEASED.toString()) as object;
    const read = await modelBundles.read(zipSync({ 'model.json': strToU8(JSON.stringify(bundle)), 'photos/holiday.jpg': strToU8('x') }));
    expect(read).toMatchObject({ ok: true, photos: [] });
  });

  it.each(hostileModelBundles().map(({ name, bytes }) => [name, bytes] as const))(
    'is refused with a sentence: %s',
    async (_name, bytes) => {
      const response = await send(bytes);
      expect(response.status).toBe(400);
      const { code, message } = (await response.json()) as { code: string; message: string };
      expect([code, message]).toEqual(['bad-bundle', expect.stringMatching(/^\S.{15,}\.$/s)]);
    },
  );

  it('a device of a hostile bundle that was taken still meets the rules of the log', async () => {
    const bundle = { ...(JSON.parse(RELEASED.toString()) as ModelBundle), from: { file: { format: 1, id: 'reed-x' } } };
    const recorded = opened.bench.record(newFromBundle('reed-x', bundle));
    expect(recorded).toMatchObject({ ok: false, code: 'fact-does-not-fit', index: 0 });
    expect(opened.bench.model('reed-x')).toBeNull();
  });
});
