import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import type { AnyEvent } from '../../src/bench/events/index.ts';
import type { EventStore, ItemQuery, RowChanges } from '../../src/bench/ports.ts';
import type { SharedStore } from '../../src/bench/ports-shared.ts';
import { Status } from '../../src/bench/views/index.ts';
import { itemRow, noteEvent, STORE_CASES } from '../../src/edges/store/store.contract.ts';

type AnyStore = EventStore | SharedStore;
type Step = (store: AnyStore) => Promise<unknown>;

export interface Differences {
  /** Cases of the contract, and scripts of random work, that were played on both stores. */
  readonly cases: number;
  readonly steps: number;
  /** What differed, by name. */
  readonly differing: readonly string[];
}

/** Plays the contract and `scripts` random scripts on two stores of different make, and tells where they do not answer alike. */
export async function storeDifferences(
  open: { readonly left: () => Promise<AnyStore>; readonly right: () => Promise<AnyStore> },
  scripts: number,
  seed: string,
): Promise<Differences> {
  const plays = [
    ...STORE_CASES.map(({ says, play }) => ({ name: says, steps: [play] as readonly Step[] })),
    ...Array.from({ length: scripts }, (_, n) => ({ name: `script ${n}`, steps: script(randomStream(`${seed} ${n}`)) })),
  ];
  const differing: string[] = [];
  for (const { name, steps } of plays) {
    const [left, right] = [await open.left(), await open.right()];
    const at = await firstDifference(steps, left, right);
    if (at !== null) differing.push(`${name} at step ${at}`);
    await left.close();
    await right.close();
  }
  return { cases: plays.length, steps: plays.reduce((sum, { steps }) => sum + steps.length, 0), differing };
}

async function firstDifference(steps: readonly Step[], left: AnyStore, right: AnyStore): Promise<number | null> {
  for (const [at, step] of steps.entries()) {
    const [one, other] = [await answer(step, left), await answer(step, right)];
    if (one !== other) return at;
  }
  return null;
}

/** As text, keys in order, so that counts that come in another order are the same. */
const answer = async (step: Step, store: AnyStore): Promise<string> =>
  JSON.stringify(await step(store), (_key, value: unknown) =>
    value !== null && typeof value === 'object' && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );

/** U+0000 is the one gap between the stores, held by a check of its own. */
const WORDS = [
  'Amber',
  'grey',
  'PLAYER',
  'Größe',
  'naïve',
  'тонарм',
  '電池',
  'boxed',
  '#12',
  'x'.repeat(40),
  'a-b',
  "o'clock",
  'ﬁne',
  'ÅNGSTRÖM',
  '١٢',
];
const IDS = ['a', 'B', 'b', 'item-1', 'item-10', 'item-2', 'Z', 'z.9', 'item_1'];

/** Thirty steps: batches with rows, lists and searches of every kind, pages, counts. */
function script(random: RandomStream): Step[] {
  let events = 0;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const text = (): string => Array.from({ length: 1 + Math.floor(random() * 3) }, () => pick(WORDS)).join(' ');
  const append = (): Step => {
    const batch = Array.from({ length: 1 + Math.floor(random() * 3) }, (): AnyEvent => {
      if (random() < 0.2 && events > 0) return noteEvent(1 + Math.floor(random() * events), 'again');
      return noteEvent(++events, text());
    });
    const put = Array.from({ length: Math.floor(random() * 4) }, () =>
      itemRow(Math.floor(random() * 40), {
        id: pick(IDS),
        name: text(),
        seller: text(),
        status: pick(Status.options),
        kind: pick(['unit', 'assembly']),
        place: pick(['', 'a', 'B']),
        lot_id: pick(['lot-1', null]),
        changed_seq: 1 + Math.floor(random() * 6),
      }),
    );
    const changes: RowChanges = { put, remove: random() < 0.3 ? [pick(IDS)] : [], version: 1 };
    return async (store) => store.append(batch, changes);
  };
  const list = (): Step => {
    const query: ItemQuery = {
      limit: 1 + Math.floor(random() * 5),
      ...(random() < 0.6 ? { search: text().slice(0, 1 + Math.floor(random() * 9)) } : {}),
      ...(random() < 0.3 ? { status: [pick(Status.options), pick(Status.options)] } : {}),
      ...(random() < 0.2 ? { kind: 'unit' } : {}),
      ...(random() < 0.2 ? { place: pick(['', 'a']) } : {}),
      ...(random() < 0.2 ? { model: 'tern-tn10' } : {}),
    };
    return async (store) => {
      const pages = [await store.items(query)];
      while (pages.at(-1)!.next !== null) pages.push(await store.items({ ...query, after: pages.at(-1)!.next! }));
      return pages;
    };
  };
  const others: readonly Step[] = [
    async (store) => store.countByStatus(),
    async (store) => store.rowsAt(),
    async (store) => store.read(2, 5),
    async (store) => [...(await store.has([1, 2, 3, 99].map((n) => noteEvent(n).id)))].sort(),
  ];
  return Array.from({ length: 30 }, () => (random() < 0.4 ? append() : random() < 0.8 ? list() : pick(others)));
}
