import { learnedChance } from '../../core/numeric/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import {
  beforeKind,
  CLAIM_KINDS,
  CLAIM_WORDS,
  claimsSettled,
  HONESTY_BEFORE,
  HONESTY_WEIGHT,
  honestyId,
  type ClaimKind,
} from './honesty.ts';
import { weightOf, type Job } from './job.ts';

type Number = LearnedView['numbers'][number];
type Claims = ReadonlyMap<ClaimKind, readonly (Job & { readonly right: boolean })[]>;

/** How often the claims of each seller were right, by what they are of, from those that trials and looks have settled. */
export function learnedClaims(state: Readonly<BenchState>): Number[] {
  return [...claimsBySeller(state)].flatMap(([seller, claims]) => {
    const records = new Map([...claims].map(([kind, jobs]) => [kind, recordOf(jobs)]));
    return CLAIM_KINDS.flatMap((kind): Number[] => {
      const jobs = (claims.get(kind) ?? []).filter(({ weight }) => weight > 0);
      if (jobs.length === 0) return [];
      const { right, wrong } = records.get(kind)!;
      return [
        {
          id: honestyId(seller, kind),
          about: 'honesty',
          unit: 'share',
          model_id: null,
          name: `Claims of ${seller} ${CLAIM_WORDS[kind]}, that are right`,
          before: HONESTY_BEFORE,
          ...learnedChance(beforeKind(records, kind), HONESTY_WEIGHT, right, wrong),
          jobs: jobs.map(({ eventId, itemId, at, text, weight }) => ({ event_id: eventId, item_id: itemId, at, text, weight })),
          reset_at: state.learning.resets.get(honestyId(seller, kind)) ?? null,
        },
      ];
    });
  });
}

function claimsBySeller(state: Readonly<BenchState>): ReadonlyMap<string, Claims> {
  const sellers = new Map<string, Map<ClaimKind, (Job & { right: boolean })[]>>();
  for (const item of state.items.values()) {
    for (const { seller, kind, right, eventId, at } of claimsSettled(item)) {
      const claims = sellers.get(seller) ?? new Map<ClaimKind, (Job & { right: boolean })[]>();
      sellers.set(seller, claims);
      const weight = weightOf(state, honestyId(seller, kind), at);
      const text = `#${item.number} ${item.name}: ${right ? 'right' : 'wrong'}`;
      const jobs = claims.get(kind) ?? [];
      jobs.push({ eventId, itemId: item.id, at, text, weight, right });
      claims.set(kind, jobs);
    }
  }
  return sellers;
}

function recordOf(jobs: readonly (Job & { readonly right: boolean })[]): { right: number; wrong: number } {
  const sum = (right: boolean): number => jobs.reduce((all, job) => all + (job.right === right ? job.weight : 0), 0);
  return { right: sum(true), wrong: sum(false) };
}
