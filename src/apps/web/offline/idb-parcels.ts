import type { Parcel, ParcelStore } from './outbox.ts';

const NAME = 'salvor-outbox';
const TABLE = 'parcels';

/** Parcels in the IndexedDB of this browser. A write is there when its transaction is complete; what cannot be kept rejects. */
export function idbParcels(): ParcelStore {
  let opened: Promise<IDBDatabase> | undefined;
  const database = (): Promise<IDBDatabase> => (opened ??= open());
  const work = async <T>(mode: IDBTransactionMode, ask: (table: IDBObjectStore) => IDBRequest<T> | void): Promise<T | undefined> => {
    const transaction = (await database()).transaction(TABLE, mode, { durability: 'strict' });
    const request = ask(transaction.objectStore(TABLE));
    await done(transaction);
    return request ? request.result : undefined;
  };
  return {
    add: async (parcels) => {
      await work('readwrite', (table) => {
        for (const parcel of parcels) table.add(parcel);
      });
    },
    all: async () => (await work('readonly', (table) => table.getAll() as IDBRequest<Parcel[]>)) ?? [],
    remove: async (id) => {
      await work('readwrite', (table) => table.delete(id));
    },
    refuse: async (id, why) => {
      await work('readwrite', (table) => {
        const found = table.get(id) as IDBRequest<Parcel | undefined>;
        found.addEventListener('success', () => found.result && table.put({ ...found.result, refusal: why }));
      });
    },
  };
}

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(TABLE, { keyPath: 'id', autoIncrement: true }));
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('the storage of this browser is closed')));
  });
}

const done = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    for (const end of ['error', 'abort'] as const)
      transaction.addEventListener(end, () => reject(transaction.error ?? new Error('the browser could not keep it')));
  });
