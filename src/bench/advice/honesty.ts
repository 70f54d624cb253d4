import type { Claim } from '../events/index.ts';
import type { Item } from '../state.ts';

/** Claims of one seller that the bench found right and wrong. */
export interface ClaimRecord {
  readonly right: number;
  readonly wrong: number;
}

/**
 * What is thought of a seller of whom nothing is known: as if five claims had been checked, of which three and a half
 * were right. Weak on purpose: five claims of their own weigh as much. Common practice, no source.
 */
export const HONESTY_PRIOR = { right: 3.5, wrong: 1.5 } as const;

/** Chance that a claim of theirs is right: mean of the Beta distribution that the prior becomes by the checked claims. */
export const honestyFrom = ({ right, wrong }: ClaimRecord): number =>
  (HONESTY_PRIOR.right + right) / (HONESTY_PRIOR.right + HONESTY_PRIOR.wrong + right + wrong);

/**
 * Claims on one item that its own trials and findings have settled, by seller. The first trial of the function (the
 * first look at the place) before any remedy or transplant decides. Works or not is what counts: "comes and goes" is
 * not working. A success with a known-good accessory settles nothing, for the accessory may have done it.
 */
export function claimsSettled(item: Item): Map<string, ClaimRecord> {
  const settled = new Map<string, ClaimRecord>();
  for (const { seller, right } of claimsJudged(item)) {
    if (right === null) continue;
    const before = settled.get(seller) ?? { right: 0, wrong: 0 };
    settled.set(seller, right ? { ...before, right: before.right + 1 } : { ...before, wrong: before.wrong + 1 });
  }
  return settled;
}

export interface JudgedClaim {
  readonly claim: Claim;
  readonly seller: string;
  /** Null while nothing has settled it. */
  readonly right: boolean | null;
}

/** Every claim on an item with whether it was right, by the same rule. */
export function claimsJudged(item: Item): JudgedClaim[] {
  const untouched = beforeAnyChange(item.history);
  return item.history.flatMap((entry) =>
    entry.kind === 'claim' ? [{ claim: entry.claim, seller: entry.seller, right: isRight(entry.claim, untouched) }] : [],
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

/** What the whole bench says of each seller. */
export interface Honesty {
  /** Chance that a claim of the seller is right, as learned from their other items than `exceptItem`. */
  chance(seller: string, exceptItem?: string): number;
  claimsChecked(seller: string): number;
}

/** Learned from every item of the bench, whatever became of it. */
export function learnHonesty(items: Iterable<Item>): Honesty {
  const sellers = new Map<string, { total: ClaimRecord; items: Map<string, ClaimRecord> }>();
  for (const item of items) {
    for (const [seller, record] of claimsSettled(item)) {
      const known = sellers.get(seller) ?? { total: { right: 0, wrong: 0 }, items: new Map<string, ClaimRecord>() };
      known.total = { right: known.total.right + record.right, wrong: known.total.wrong + record.wrong };
      known.items.set(item.id, record);
      sellers.set(seller, known);
    }
  }
  return {
    chance(seller, exceptItem) {
      const known = sellers.get(seller);
      const own = exceptItem === undefined ? undefined : known?.items.get(exceptItem);
      const total = known?.total ?? { right: 0, wrong: 0 };
      return honestyFrom({ right: total.right - (own?.right ?? 0), wrong: total.wrong - (own?.wrong ?? 0) });
    },
    claimsChecked: (seller) => {
      const total = sellers.get(seller)?.total;
      return total ? total.right + total.wrong : 0;
    },
  };
}
