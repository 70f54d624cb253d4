import type { Claim } from '../events/index.ts';
import type { BenchState, Item } from '../state.ts';
import { byHistory } from './by-history.ts';
import { weightOf } from './job.ts';

/** What a claim is of: that something works, that it does not, or how something looks. */
export const CLAIM_KINDS = ['works', 'fails', 'looks'] as const;
export type ClaimKind = (typeof CLAIM_KINDS)[number];

/** What follows "a claim". */
export const CLAIM_WORDS: Readonly<Record<ClaimKind, string>> = {
  works: 'that something works',
  fails: 'that something does not work',
  looks: 'of how something looks',
};

/** Null of a claim that says nothing: that it was not tried. */
export function claimKind(claim: Claim): ClaimKind | null {
  if (claim.about === 'untested') return null;
  if (claim.about === 'place') return 'looks';
  return claim.says === 'works' ? 'works' : 'fails';
}

/** A claim that trials or looks have settled. */
export interface SettledClaim {
  readonly seller: string;
  readonly kind: ClaimKind;
  readonly right: boolean;
  readonly eventId: string;
  readonly at: string;
}

/**
 * Claims on one item that its own trials and findings have settled. The first trial of the function (the
 * first look at the place) before any remedy or transplant decides. Works or not is what counts: "comes and goes" is
 * not working. A success with a known-good accessory settles nothing, for the accessory may have done it.
 */
export const claimsSettled = byHistory((item): readonly SettledClaim[] =>
  claimsJudged(item).flatMap(({ claim, seller, right, eventId, at }) => {
    const kind = claimKind(claim);
    return kind === null || right === null ? [] : [{ seller, kind, right, eventId, at }];
  }),
);

export interface JudgedClaim {
  readonly claim: Claim;
  readonly seller: string;
  /** Null while nothing has settled it. */
  readonly right: boolean | null;
  readonly eventId: string;
  readonly at: string;
}

/** Every claim on an item with whether it was right, by the same rule. */
export function claimsJudged(item: Pick<Item, 'history'>): JudgedClaim[] {
  const untouched = beforeAnyChange(item.history);
  return item.history.flatMap((entry) =>
    entry.kind === 'claim'
      ? [{ claim: entry.claim, seller: entry.seller, right: isRight(entry.claim, untouched), eventId: entry.eventId, at: entry.at }]
      : [],
  );
}

type History = Item['history'];

function beforeAnyChange(history: History): History {
  const change = history.findIndex((entry) => entry.kind === 'remedy' || entry.kind === 'slot');
  return change < 0 ? history : history.slice(0, change);
}

function isRight(claim: Claim, facts: History): boolean | null {
  if (claim.about === 'function') {
    for (const fact of facts) {
      if (fact.kind !== 'trial' || fact.function !== claim.function) continue;
      const works = fact.outcome === 'works';
      if (works && fact.with.length > 0) continue;
      return works === (claim.says === 'works');
    }
  }
  if (claim.about === 'place') {
    const look = facts.find((fact) => fact.kind === 'finding' && fact.place === claim.place);
    if (look?.kind === 'finding') return (look.sees === 'nothing-wrong') === (claim.sees === 'nothing-wrong');
  }
  return null;
}

/**
 * What is thought of a seller of whom nothing is known: as if five claims had been checked, of which three and a half
 * were right. Weak on purpose: five claims of their own weigh as much. Common practice, no source.
 */
const BEFORE = { right: 3.5, wrong: 1.5 } as const;
export const HONESTY_WEIGHT = BEFORE.right + BEFORE.wrong;
export const HONESTY_BEFORE = BEFORE.right / HONESTY_WEIGHT;

/** Claims found right and wrong; fractions where they faded. */
export interface ClaimRecord {
  readonly right: number;
  readonly wrong: number;
}

const NONE: ClaimRecord = { right: 0, wrong: 0 };
const plus = (one: ClaimRecord, other: ClaimRecord, times = 1): ClaimRecord => ({
  right: one.right + times * other.right,
  wrong: one.wrong + times * other.wrong,
});

/** Chance that a claim is right: mean of the Beta distribution that a belief of that mean, as heavy as `HONESTY_WEIGHT` claims, becomes by those checked. */
export const honestyFrom = ({ right, wrong }: ClaimRecord, before = HONESTY_BEFORE): number =>
  (before * HONESTY_WEIGHT + right) / (HONESTY_WEIGHT + right + wrong);

type ByKind = ReadonlyMap<ClaimKind, ClaimRecord>;

const all = (records: ByKind): ClaimRecord => [...records.values()].reduce((sum, each) => plus(sum, each), NONE);

/** A claim of another kind tells so much of this kind. Common practice, no source. */
const OTHER_KIND = 0.5;

/** What claims of one kind are taken for before any of them was checked: by what those of the other kinds were worth. */
export function beforeKind(records: ByKind, kind: ClaimKind): number {
  const others = plus(all(records), records.get(kind) ?? NONE, -1);
  return honestyFrom(plus(NONE, others, OTHER_KIND));
}

/** What the whole bench says of each seller. */
export interface Honesty {
  /** Chance that a claim of that kind by the seller is right, as learned from their other items than `exceptItem`; with null, of claims of any kind. */
  chance(seller: string, kind: ClaimKind | null, exceptItem?: string): number;
  claimsChecked(seller: string): number;
}

/** Learned from every item of the bench, whatever became of it; what is old counts less, and what was reset not. */
export function learnHonesty(state: Readonly<BenchState>): Honesty {
  const sellers = new Map<string, Map<string, Map<ClaimKind, ClaimRecord>>>();
  const checked = new Map<string, number>();
  for (const item of state.items.values()) {
    for (const { seller, kind, right, at } of claimsSettled(item)) {
      const items = sellers.get(seller) ?? new Map<string, Map<ClaimKind, ClaimRecord>>();
      sellers.set(seller, items);
      for (const of of [item.id, EVERY]) {
        const records = items.get(of) ?? new Map<ClaimKind, ClaimRecord>();
        const weight = weightOf(state, honestyId(seller, kind), at);
        records.set(kind, plus(records.get(kind) ?? NONE, right ? { right: weight, wrong: 0 } : { right: 0, wrong: weight }));
        items.set(of, records);
      }
      checked.set(seller, (checked.get(seller) ?? 0) + 1);
    }
  }
  return {
    chance(seller, kind, exceptItem) {
      const items = sellers.get(seller);
      const records = without(items?.get(EVERY), exceptItem === undefined ? undefined : items?.get(exceptItem));
      return kind === null ? honestyFrom(all(records)) : honestyFrom(records.get(kind) ?? NONE, beforeKind(records, kind));
    },
    claimsChecked: (seller) => checked.get(seller) ?? 0,
  };
}

/** No item is called so. */
const EVERY = '';

function without(records: ByKind | undefined, own: ByKind | undefined): ByKind {
  if (!records || !own) return records ?? new Map();
  return new Map([...records].map(([kind, record]) => [kind, plus(record, own.get(kind) ?? NONE, -1)]));
}

/** The name of a learned number, of letters, digits, dots and hyphens. */
export const honestyId = (seller: string, kind: ClaimKind): string => `honesty.${seller.replaceAll(/[^A-Za-z0-9]+/g, '-')}.${kind}`;
