import { learnedChance } from '../../core/numeric/index.ts';
import { claimsSettled, HONESTY_PRIOR } from '../advice/honesty.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { weightOf } from './job.ts';

type Number = LearnedView['numbers'][number];

/** How often the claims of each seller were right, from those that trials and looks have settled. */
export function learnedClaims(state: Readonly<BenchState>): Number[] {
  const sellers = new Map<string, { right: number; wrong: number; jobs: Number['jobs'] }>();
  for (const item of state.items.values()) {
    for (const [seller, { right, wrong }] of claimsSettled(item)) {
      const at = item.history.find(({ kind }) => kind === 'claim')!;
      const weight = weightOf(state, idOf(seller), at.at);
      const known = sellers.get(seller) ?? { right: 0, wrong: 0, jobs: [] };
      const job = {
        event_id: at.eventId,
        item_id: item.id,
        at: at.at,
        text: `#${item.number} ${item.name}: ${right} right, ${wrong} wrong`,
        weight,
      };
      sellers.set(seller, { right: known.right + weight * right, wrong: known.wrong + weight * wrong, jobs: [...known.jobs, job] });
    }
  }
  const weight = HONESTY_PRIOR.right + HONESTY_PRIOR.wrong;
  const before = HONESTY_PRIOR.right / weight;
  return [...sellers].map(([seller, { right, wrong, jobs }]) => ({
    id: idOf(seller),
    about: 'honesty',
    unit: 'share',
    model_id: null,
    name: `Claims of ${seller} that are right`,
    before,
    ...learnedChance(before, weight, right, wrong),
    jobs: jobs.filter((job) => job.weight > 0),
    reset_at: state.learning.resets.get(idOf(seller)) ?? null,
  }));
}

/** A name of letters and digits for a seller. */
const idOf = (seller: string): string => `honesty.${seller.replaceAll(/[^A-Za-z0-9]+/g, '-')}`;
