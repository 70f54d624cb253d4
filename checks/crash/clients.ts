import { v7 } from 'uuid';

export interface SentEvent {
  readonly id: string;
  readonly kind: string;
  readonly body: Readonly<Record<string, unknown>>;
}

interface Prepared {
  readonly itemIds: readonly string[];
  readonly points: readonly { readonly id: string; readonly mode: string }[];
}

const ITEMS = 5;

const event = (kind: string, body: SentEvent['body']): SentEvent & Record<string, unknown> => ({
  id: v7(),
  at: new Date().toISOString(),
  device: 'crash-client',
  version: 1,
  kind,
  body,
});

async function ask<T>(url: string, init?: RequestInit): Promise<T> {
  const response = await fetch(url, init);
  if (!response.ok) throw new Error(`${url} answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as T;
}

const post = (url: string, events: readonly SentEvent[]): Promise<unknown> =>
  ask(`${url}/api/events`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ events }) });

/** Buys and receives a lot of the model with the most points, and tells what can be measured on its items. */
export async function prepareItems(url: string, count = ITEMS): Promise<Prepared> {
  const { models } = await ask<{ models: { id: string; points: number }[] }>(`${url}/api/models`);
  const model = models.toSorted((a, b) => b.points - a.points)[0]!.id;
  const { file } = await ask<{ file: { points: Prepared['points'] } }>(`${url}/api/models/${model}`);
  const itemIds = Array.from({ length: count }, (_, i) => `crash-${i + 1}`);
  const items = itemIds.map((item_id) => ({ item_id, name: item_id, model_id: model, expected_value_minor: 1000 }));
  const lot = { lot_id: 'crash-lot', title: 'A lot for the crash', seller: 'Harbour Clearance', price_minor: 5000, currency: 'GBP', items };
  await post(url, [event('lot-bought', lot), ...itemIds.map((item_id) => event('item-received', { item_id }))]);
  return { itemIds, points: file.points };
}

/** Notes and readings in turn over the items; `from` says where in the turn to begin. */
export function someEvents({ itemIds, points }: Prepared, count: number, from = 0): SentEvent[] {
  return Array.from({ length: count }, (_, at) => {
    const i = from + at;
    const item_id = itemIds[i % itemIds.length]!;
    const point = points[i % Math.max(points.length, 1)];
    if (i % 2 === 0 || point === undefined) return event('note-written', { item_id, text: `note ${i} of a long evening` });
    return event('reading-taken', { item_id, point: point.id, mode: point.mode, value: 1 + (i % 100) / 50 });
  });
}

/** Sends one event; true when the server says that it is stored, false when it is gone. A refusal throws. */
export async function acknowledge(url: string, sent: SentEvent): Promise<boolean> {
  try {
    await post(url, [sent]);
    return true;
  } catch (error) {
    if (error instanceof TypeError) return false;
    throw error;
  }
}

/** The id of every event in the log, in its order; throws when a place of the log is left out. */
export async function everyStored(url: string): Promise<string[]> {
  const ids: string[] = [];
  for (;;) {
    const path = `${url}/api/events?limit=1000&after=${ids.length}`;
    const { events } = await ask<{ events: { seq: number; event: { id: string } }[] }>(path);
    if (events.length === 0) return ids;
    for (const { seq, event: stored } of events) {
      if (seq !== ids.length + 1) throw new Error(`the log jumps from place ${ids.length} to ${seq}`);
      ids.push(stored.id);
    }
  }
}
