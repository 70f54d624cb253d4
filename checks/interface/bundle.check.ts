import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from '../../src/bench/bench.ts';
import { stateText } from '../../src/bench/index.ts';
import { readFolder } from '../../src/edges/bundle/index.ts';
import { openApp, type OpenedApp } from './open-app.ts';

const hashOf = (bench: Bench): string => createHash('sha256').update(stateText(bench.state())).digest('hex');

describe('a whole bench as one bundle', () => {
  let full: OpenedApp;
  let empty: OpenedApp;

  beforeAll(async () => {
    [full, empty] = [await openApp(), await openApp()];
    const demo = await readFolder(join(import.meta.dirname, '../../demo'));
    if (!demo.ok) throw new Error(demo.detail);
    expect(full.bench.adopt(demo.events)).toMatchObject({ ok: true });
    const form = new FormData();
    for (const { name, bytes } of demo.photos.slice(0, 3)) form.append('photos', new Blob([Buffer.from(bytes)]), name);
    expect((await full.ask('/api/photos', form)).status).toBe(200);
  });
  afterAll(async () => {
    await full.close();
    await empty.close();
  });

  it('goes out and comes into an empty bench as the same state, by hash, with the same photos', async () => {
    const bundle = new Uint8Array(await (await full.ask('/api/bundle')).arrayBuffer());
    expect(hashOf(empty.bench)).not.toBe(hashOf(full.bench));
    expect((await empty.ask('/api/bundle', bundle)).status).toBe(200);
    expect(hashOf(empty.bench)).toBe(hashOf(full.bench));
    const again = new Uint8Array(await (await empty.ask('/api/bundle')).arrayBuffer());
    expect(createHash('sha256').update(again).digest('hex')).toBe(createHash('sha256').update(bundle).digest('hex'));
  });

  it('does not come into a bench that holds something already', async () => {
    const bundle = new Uint8Array(await (await full.ask('/api/bundle')).arrayBuffer());
    const answer = await full.ask('/api/bundle', bundle);
    expect(answer.status).toBe(409);
    expect(await answer.json()).toMatchObject({ message: expect.stringMatching(/empty/i) });
  });
});
