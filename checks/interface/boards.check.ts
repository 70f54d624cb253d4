import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BoardProgress, BoardShelf } from '../../src/bench/boards/index.ts';
import { openApp, type OpenedApp } from './open-app.ts';

/** A shelf that is at the second of three rows of one model. */
class ShelfAtWork implements BoardShelf {
  readonly watchers = new Set<() => void>();
  private stage: BoardProgress['stage'] = 'computing';
  knowledge = (): null => null;
  settled = async (): Promise<null> => null;
  close = async (): Promise<void> => undefined;
  progress = (): BoardProgress[] => [{ modelId: 'tern-tn20', confirmed: ['r12:missing'], done: 2, rows: 3, stage: this.stage }];
  watch(tell: () => void): () => void {
    this.watchers.add(tell);
    return () => void this.watchers.delete(tell);
  }
  stop(): void {
    this.stage = 'stopped';
  }
  go(): void {
    this.stage = 'computing';
  }
}

describe('the work on circuits, asked over the interface', () => {
  const shelf = new ShelfAtWork();
  let opened: OpenedApp;
  beforeAll(async () => {
    opened = await openApp({ boards: shelf });
  });
  afterAll(() => opened.close());

  const at = (stage: string) => ({ boards: [{ model_id: 'tern-tn20', confirmed: ['r12:missing'], done: 2, rows: 3, stage }] });

  it('tells how far it is, and is stopped and set going again', async () => {
    expect(await (await opened.ask('/api/boards')).json()).toEqual(at('computing'));
    expect(await (await opened.ask('/api/boards/stop', {})).json()).toEqual(at('stopped'));
    expect(await (await opened.ask('/api/boards')).json()).toEqual(at('stopped'));
    expect(await (await opened.ask('/api/boards/go', {})).json()).toEqual(at('computing'));
  });

  it('is announced to open pages whenever more is known, until they leave', async () => {
    const response = await opened.ask('/api/changes');
    const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
    let heard = (await reader.read()).value!;
    expect(shelf.watchers.size).toBe(1);
    for (const tell of shelf.watchers) tell();
    while (!heard.includes('event: boards')) heard += (await reader.read()).value;
    await reader.cancel();
    await expect.poll(() => shelf.watchers.size).toBe(0);
  });

  it('is none on a bench that computes no circuits', async () => {
    const plain = await openApp();
    expect(await (await plain.ask('/api/boards')).json()).toEqual({ boards: [] });
    expect((await plain.ask('/api/boards/stop', {})).status).toBe(200);
    await plain.close();
  });
});
