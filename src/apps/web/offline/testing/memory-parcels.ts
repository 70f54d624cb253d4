import type { Parcel, ParcelStore } from '../outbox.ts';

/** Parcels in memory, for tests; they outlast the outbox that kept them. */
export function memoryParcels(): ParcelStore {
  const parcels = new Map<number, Parcel>();
  let last = 0;
  return {
    add: async (fresh) => {
      for (const parcel of fresh) {
        last++;
        parcels.set(last, { ...parcel, id: last });
      }
    },
    all: async () => [...parcels.values()],
    remove: async (id) => void parcels.delete(id),
    refuse: async (id, why) => void parcels.set(id, { ...parcels.get(id)!, refusal: why }),
  };
}
