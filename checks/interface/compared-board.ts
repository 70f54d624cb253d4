import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect } from 'vitest';
import type { ComparisonView } from '../../src/bench/views/index.ts';
import type { OpenedApp } from './open-app.ts';

const PHOTO = join(import.meta.dirname, '../../demo/photos/fc7c859c3e92380d48255252847a0f32e1ad1a0b93b007e6f4d0c78003960b81.jpg');

/** Sends a photo of the board of a unit, and has it compared. */
export async function comparedBoard(opened: OpenedApp, itemId: string): Promise<ComparisonView> {
  const form = new FormData();
  form.append('photos', new Blob([new Uint8Array(readFileSync(PHOTO))], { type: 'image/jpeg' }), 'board.jpg');
  const { results } = (await (await opened.ask('/api/photos', form)).json()) as { results: { photo: { hash: string } }[] };
  const photo = results[0]!.photo.hash;
  const side = 'board-front';
  const taken = await opened.ask('/api/events', { events: [{ kind: 'photo-taken', body: { item_id: itemId, photo, side } }] });
  expect(taken.status, await taken.clone().text()).toBe(200);
  const ask = async (): Promise<ComparisonView> =>
    (await (await opened.ask('/api/comparisons', { item_id: itemId, photo, side })).json()) as ComparisonView;
  for (let view = await ask(); ; view = await ask()) {
    if (view.stage === 'ready') return view;
    expect(['waiting', 'working']).toContain(view.stage);
    await setTimeout(20);
  }
}
