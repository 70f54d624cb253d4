import { startServer, type ServerProcess } from '../figures/server-process.ts';
import { v7 } from 'uuid';

/** An event of this check, as a device sends it. */
const event = (kind: string, body: object): unknown => ({ id: v7(), at: '2026-05-04T09:00:00Z', device: 'check', version: 1, kind, body });

/** A Tern TN-20 that does not start on its cell and not on its charger, with its board out. */
export const brokenTern = (): unknown[] => [
  event('lot-bought', {
    lot_id: 'lot-1',
    title: 'Pocket player, dead',
    seller: 'Larkhill clearances',
    price_minor: 1200,
    currency: 'GBP',
    items: [{ item_id: 'tern', name: 'Grey Tern', model_id: 'tern-tn20', expected_value_minor: 4000 }],
  }),
  event('item-received', { item_id: 'tern' }),
  event('trial-done', { item_id: 'tern', function: 'starts', outcome: 'fails', with: ['good-battery'], minutes: 1 }),
  event('trial-done', { item_id: 'tern', function: 'charges', outcome: 'works', minutes: 2 }),
  event('opened-to', { item_id: 'tern', stage: 'board-out', minutes: 12 }),
];

/** A server on this folder that has it on its bench, and nothing else. */
export async function serveBrokenTern(home: string): Promise<ServerProcess> {
  const server = await startServer(home, ['--empty']);
  const body = JSON.stringify({ events: brokenTern() });
  const { ok } = await fetch(`${server.url}/api/events`, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
  if (!ok) throw new Error('the server did not take the broken Tern');
  return server;
}
