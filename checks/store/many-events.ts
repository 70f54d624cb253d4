import type { RandomStream } from '../../src/core/numeric/index.ts';
import { EVENT_VERSION } from '../../src/bench/events/index.ts';
import { ROWS_VERSION, Status, type ItemRow } from '../../src/bench/views/index.ts';
import type { ItemQuery } from '../../src/bench/ports.ts';
import { openPostgresStore } from '../../src/edges/store/postgres/postgres-store.ts';
import { subjectsKept } from '../../src/bench/shared/index.ts';
import { ask } from './postgres-server.ts';

/** Items of a lot, and events about each item: with the purchase of the lot that makes 51 events for five items. */
const ITEMS_OF_LOT = 5;
const EVENTS_OF_ITEM = 10;
const EVENTS_OF_LOT = 1 + ITEMS_OF_LOT * EVENTS_OF_ITEM;
const AT_ONCE = 50_000;

export const eventsOf = (items: number): number => (items / ITEMS_OF_LOT) * EVENTS_OF_LOT;

/**
 * Fills an empty database with a bench of so many items, a multiple of five: lots of five, each item received and then noted upon, tried and
 * measured. Events are made by the database itself, as a client would take hours; rows are made and put by the store. Gives the store's address back.
 */
export async function fillDatabase(url: string, items: number, random: RandomStream, progress: (done: number) => void): Promise<void> {
  const store = await openPostgresStore(url, subjectsKept);
  await store.close();
  const lots = items / ITEMS_OF_LOT;
  for (let from = 0; from < lots; from += AT_ONCE / ITEMS_OF_LOT) {
    await ask(url, lotsSql(from, Math.min(lots, from + AT_ONCE / ITEMS_OF_LOT)));
    progress(Math.min(items, from * ITEMS_OF_LOT + AT_ONCE));
  }
  await putRows(url, items, random);
  await ask(url, 'VACUUM ANALYZE');
}

const AT = `'2026-05-01T09:00:00Z'`;
const COLUMNS = 'seq, id, at, device, kind, version, checked_version, body';
/** An id of the shape of version 7 (RFC 9562, section 5.7), by the place of the event. */
const idAt = (seq: string): string =>
  `'01890000-' || substr(lpad(to_hex(${seq}), 12, '0'), 1, 4) || '-7' || substr(lpad(to_hex(${seq}), 12, '0'), 5, 3) || '-8' || substr(lpad(to_hex(${seq}), 12, '0'), 8, 3) || '-' || lpad(to_hex(${seq}), 12, '0')`;

function lotsSql(from: number, to: number): string {
  const lotSeq = `(lot::bigint * ${EVENTS_OF_LOT} + 1)`;
  const seq = `(lot::bigint * ${EVENTS_OF_LOT} + 2 + one * ${EVENTS_OF_ITEM} + step)`;
  const item = `'item-' || (lot * ${ITEMS_OF_LOT} + one)`;
  const lots = `generate_series(${from}, ${to - 1}) AS lot`;
  const ones = `generate_series(0, ${ITEMS_OF_LOT - 1}) AS one`;
  const steps = `generate_series(0, ${EVENTS_OF_ITEM - 1}) AS step`;
  const bought = `format('{"lot_id":"lot-%s","title":"lot %s of players","seller":"harbour clearance","price_minor":5000,"postage_minor":0,"tax_minor":0,"currency":"GBP","rate":1,"items":[%s]}', lot, lot,
    (SELECT string_agg(format('{"item_id":"item-%s","name":"player %s","kind":"unit","model_id":"tern-tn10","expected_value_minor":1000}', lot * ${ITEMS_OF_LOT} + one, lot * ${ITEMS_OF_LOT} + one), ',') FROM ${ones}))`;
  return `
    BEGIN;
    INSERT INTO event (${COLUMNS}) SELECT ${lotSeq}, ${idAt(lotSeq)}, ${AT}, 'desk', 'lot-bought', 1, ${EVENT_VERSION}, ${bought} FROM ${lots};
    INSERT INTO event_subject (item_id, seq) SELECT ${item}, ${lotSeq} FROM ${lots}, ${ones};
    INSERT INTO event (${COLUMNS}) SELECT ${seq}, ${idAt(seq)}, ${AT}, 'desk',
      (ARRAY['item-received', 'note-written', 'reading-taken'])[CASE step WHEN 0 THEN 1 ELSE 2 + step % 2 END], 1, ${EVENT_VERSION},
      CASE WHEN step = 0 THEN format('{"item_id":"%s"}', ${item})
        WHEN step % 2 = 0 THEN format('{"item_id":"%s","text":"note %s of a long evening"}', ${item}, step)
        ELSE format('{"item_id":"%s","point":"battery","mode":"volts","value":%s}', ${item}, 2.5 + step / 10.0) END
      FROM ${lots}, ${ones}, ${steps};
    INSERT INTO event_subject (item_id, seq) SELECT ${item}, ${seq} FROM ${lots}, ${ones}, ${steps};
    COMMIT`;
}

const NAMES = ['slate', 'amber', 'grey', 'cracked', 'boxed', 'yellowed', 'spare', 'scuffed', 'mint', 'rattling'];
const SELLERS = ['harbour clearance', 'attic finds', 'quay auctions', 'returns desk'];
const MODELS = ['tern-tn10', 'tern-tn20', 'corrie-cp4'];
const pick = <T>(list: readonly T[], random: RandomStream): T => list[Math.floor(random() * list.length)]!;

/** Rows in one transaction, which holds off all other writers. */
const ROWS_AT_ONCE = 10_000;

async function putRows(url: string, items: number, random: RandomStream): Promise<void> {
  const store = await openPostgresStore(url, subjectsKept);
  for (let from = 0; from < items; from += ROWS_AT_ONCE) {
    const count = Math.min(ROWS_AT_ONCE, items - from);
    const put = Array.from({ length: count }, (_, i) => rowAt(from + i, random));
    await store.append([], { put, remove: [], version: ROWS_VERSION });
  }
  await store.close();
}

function rowAt(i: number, random: RandomStream): ItemRow {
  const lot = Math.floor(i / ITEMS_OF_LOT);
  return {
    id: `item-${i}`,
    number: i + 1,
    name: `${pick(NAMES, random)} ${pick(NAMES, random)} player ${i}`,
    kind: random() < 0.8 ? 'unit' : 'assembly',
    model_id: pick(MODELS, random),
    status: pick(Status.options, random),
    lot_id: `lot-${lot}`,
    lot_title: `lot ${lot} of players`,
    seller: pick(SELLERS, random),
    place: '',
    slot: '',
    cost_minor: 1000,
    grade: '',
    changed_at: '2026-05-01T09:00:00Z',
    changed_seq: 1 + lot * EVENTS_OF_LOT + (1 + (i % ITEMS_OF_LOT)) * EVENTS_OF_ITEM,
  };
}

/** What people ask lists for: mostly the front, some filters, some words common and rare. */
export function someQuery(items: number, random: RandomStream): ItemQuery {
  const status = random() < 0.4 ? { status: [pick(Status.options, random)] } : {};
  const model = random() < 0.2 ? { model: pick(MODELS, random) } : {};
  return { limit: 50, ...status, ...model, ...(random() < 0.5 ? { search: someSearch(items, random) } : {}) };
}

export const someSearch = (items: number, random: RandomStream): string =>
  pick(
    [
      pick(NAMES, random),
      `${pick(NAMES, random)} ${pick(NAMES, random)} play`,
      `#${Math.ceil(random() * items)}`,
      `${Math.ceil(random() * items)}`,
      'harb',
      `lot ${Math.floor((random() * items) / ITEMS_OF_LOT)}`,
      'nowhere to be found',
    ],
    random,
  );
