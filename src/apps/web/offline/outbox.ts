import type { StampedEvent } from '../actions/stamp.ts';

/** What one gesture leaves to be delivered: events as they were stamped, or a picture that later events name by its hash. */
export type Content =
  | { readonly what: 'events'; readonly events: readonly StampedEvent[] }
  | { readonly what: 'photo'; readonly name: string; readonly hash: string; readonly picture: Blob };

export interface Parcel {
  /** Place in the order of keeping. */
  readonly id: number;
  readonly said: string;
  readonly content: Content;
  /** Why the bench did not take it; such a parcel is kept until the person puts it away. */
  readonly refusal: string | null;
}

/** Where parcels are kept on the device; in order of their ids. */
export interface ParcelStore {
  add(parcels: readonly Omit<Parcel, 'id'>[]): Promise<void>;
  all(): Promise<Parcel[]>;
  remove(id: number): Promise<void>;
  refuse(id: number, why: string): Promise<void>;
}

/** How the bench met a parcel. With `away` nothing is known of it, or it will be taken later: it is sent again, and what had arrived is stored once. */
export type Delivery = { readonly met: 'taken' } | { readonly met: 'away' } | { readonly met: 'refused'; readonly why: string };

export interface OutboxState {
  /** Not delivered yet. */
  readonly waiting: readonly Parcel[];
  readonly refused: readonly Parcel[];
}

export interface Outbox {
  /** Kept on the device when it resolves. */
  keep(parcels: readonly Pick<Parcel, 'said' | 'content'>[]): Promise<void>;
  /** Delivers in order until all is delivered or the bench is away; true when nothing waits any more. One delivery runs at a time. */
  deliver(): Promise<boolean>;
  /** Lets go of a parcel that was refused. */
  putAway(id: number): Promise<void>;
  state(): OutboxState;
  /** Reads what earlier pages have kept. */
  load(): Promise<void>;
  watch(call: () => void): () => void;
}

/** What is noted and not yet delivered: in order, each thing once, nothing dropped. */
export function createOutbox(store: ParcelStore, send: (content: Content) => Promise<Delivery>): Outbox {
  const watchers = new Set<() => void>();
  let state: OutboxState = { waiting: [], refused: [] };
  let underway: Promise<boolean> | null = null;

  const load = async (): Promise<void> => {
    const all = await store.all();
    state = { waiting: all.filter(({ refusal }) => refusal === null), refused: all.filter(({ refusal }) => refusal !== null) };
    for (const call of watchers) call();
  };
  const deliverAll = async (): Promise<boolean> => {
    for (;;) {
      await load();
      const [next] = state.waiting;
      if (!next) return true;
      const delivery = await send(next.content);
      if (delivery.met === 'away') return false;
      if (delivery.met === 'taken') await store.remove(next.id);
      else await store.refuse(next.id, delivery.why);
    }
  };
  return {
    async keep(parcels) {
      await store.add(parcels.map((parcel) => ({ ...parcel, refusal: null })));
      await load();
    },
    deliver() {
      underway ??= deliverAll().finally(() => (underway = null));
      return underway;
    },
    async putAway(id) {
      await store.remove(id);
      await load();
    },
    state: () => state,
    load,
    watch(call) {
      watchers.add(call);
      return () => watchers.delete(call);
    },
  };
}
