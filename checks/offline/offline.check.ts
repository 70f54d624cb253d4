import { expect, it } from 'vitest';
import { openApp } from '../interface/open-app.ts';
import { offlinePhone } from './offline-phone.ts';

it('what a phone noted offline arrives once and in order, though requests and answers are lost and its page is reloaded', async () => {
  const result = await offlinePhone('a walk in the cellar', 50, 10);
  expect(result).toMatchObject({ events: 50, photos: 10, errors: 0 });
  expect(result.lostRequests).toBeGreaterThan(3);
  expect(result.lostAnswers).toBeGreaterThan(3);
});

it('two devices that worked on one unit apart both stay in the log, and what cannot both be is refused with a sentence', async () => {
  const opened = await openApp();
  const items = [{ item_id: 'blue', name: 'Blue Tern', model_id: 'tern-tn10', expected_value_minor: 2000 }];
  const lot = { lot_id: 'lot-1', title: 'One', seller: 'Harbour Clearance', price_minor: 2400, currency: 'GBP', items };
  const send = (device: string, kind: string, body: object): Promise<Response> =>
    opened.ask('/api/events', { events: [{ kind, device, body }] });
  await send('desk', 'lot-bought', lot);
  const reading = { item_id: 'blue', point: 'VBAT', mode: 'volts' };
  expect((await send('desk', 'reading-taken', { ...reading, value: 2.9 })).status).toBe(200);
  expect((await send('phone', 'reading-taken', { ...reading, value: 0.2 })).status).toBe(200);
  const file = (await (await opened.ask('/api/items/blue')).json()) as {
    readings: readonly { value: number }[];
    log: readonly { device: string }[];
  };
  expect(file.readings.map(({ value }) => value).toSorted()).toEqual([0.2, 2.9]);
  expect(opened.bench.log(0, 9).map(({ event }) => event.device)).toEqual(['desk', 'desk', 'phone']);
  const sale = { item_id: 'blue', as: 'for-parts', price_minor: 100, currency: 'GBP' };
  expect((await send('desk', 'sold', sale)).status).toBe(200);
  const second = await send('phone', 'sold', sale);
  expect([second.status, ((await second.json()) as { message: string }).message]).toEqual([409, expect.stringMatching(/sold/)]);
  await opened.close();
});
