import jsQR from 'jsqr';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rasterise } from '../print/raster.ts';
import { NETWORK, openApp, type OpenedApp } from './open-app.ts';

/** Source of the reader: checks/print/SOURCE.md. */
const PX_PER_MM = 8;

describe('labels asked over the interface', () => {
  let opened: OpenedApp;
  beforeAll(async () => {
    opened = await openApp();
    const events = [
      {
        kind: 'lot-bought',
        body: {
          lot_id: 'lot',
          title: 't',
          seller: 's',
          price_minor: 100,
          currency: 'GBP',
          items: [{ item_id: 'blue', name: 'Blue Tern', model_id: 'tern-tn10', expected_value_minor: 1 }],
        },
      },
      { kind: 'part-bought', body: { bag_id: 'speakers', part: 'speaker', name: 'Speaker', count: 3, price_minor: 90, currency: 'GBP' } },
    ];
    expect((await opened.ask('/api/events', { events })).status).toBe(200);
  });
  afterAll(() => opened.close());

  /** What a reader finds on the left and on the right half of the first page. */
  async function codesOn(query: string): Promise<(string | undefined)[]> {
    const answer = await opened.ask(`/api/labels?items=1&bags=speakers&sheet=a4-8${query}`);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    const [page] = await rasterise(new Uint8Array(await answer.arrayBuffer()), PX_PER_MM);
    const { width, height, grey } = page!;
    const half = Math.floor(width / 2);
    return [0, half].map((left) => {
      const rgba = new Uint8ClampedArray(4 * half * height);
      for (let y = 0; y < height; y++)
        for (let x = 0; x < half; x++) rgba.fill(grey[y * width + left + x]!, 4 * (y * half + x), 4 * (y * half + x) + 3);
      return jsQR(rgba, half, height)?.data;
    });
  }

  it('open the unit and the bag where the network reaches the bench', async () => {
    expect(await codesOn('')).toEqual([`${NETWORK.urls[0]}bench/blue`, `${NETWORK.urls[0]}drawer/bag/speakers`]);
  });

  it('open them at another address when one is given', async () => {
    const address = 'http://127.0.0.1:4780';
    expect(await codesOn(`&address=${encodeURIComponent(address)}`)).toEqual([`${address}/bench/blue`, `${address}/drawer/bag/speakers`]);
  });

  it('are refused with where when there is no such thing', async () => {
    const refused = async (query: string): Promise<unknown> => {
      const answer = await opened.ask(`/api/labels?${query}`);
      const { code, where } = (await answer.json()) as { code: string; where?: string };
      return [answer.status, code, where];
    };
    expect(await refused('items=9')).toEqual([404, 'no-such-item', 'items']);
    expect(await refused('bags=lost')).toEqual([404, 'no-such-bag', 'bags']);
    expect(await refused('')).toEqual([400, 'bad-input', 'query.items']);
    expect(await refused('items=1&sheet=a5')).toEqual([400, 'bad-input', 'query.sheet']);
    expect(await refused('items=1&address=javascript:x')).toEqual([400, 'bad-input', 'query.address']);
  });
});
