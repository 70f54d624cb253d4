import type { Item } from '../state.ts';
import type { AdviceView } from '../views/index.ts';
import { declinedBy } from './next-thing.ts';
import { money, percent } from './say.ts';

const bare = (item: Item, advice: Pick<AdviceView, 'do' | 'id' | 'headline' | 'why'>): AdviceView => ({
  ...advice,
  check: null,
  remedy: null,
  other_checks: [],
  other_remedies: [],
  declined: declinedBy(item),
});

const nothing = (item: Item, headline: string, why: string[] = []): AdviceView =>
  bare(item, { do: 'nothing', id: 'nothing', headline, why });

/** Advice that needs no thinking about faults: for what has left, has not come, is for sale, or lies in the drawer. Null for a unit under work. */
export function adviceAtRest(item: Item, currency: string, wellChance: number): AdviceView | null {
  switch (item.status) {
    case 'sold':
      return nothing(item, 'It is sold; nothing is left to do');
    case 'kept':
      return nothing(item, 'You keep it; nothing is left to do');
    case 'scrapped':
      return nothing(item, 'It is scrapped; nothing is left to do');
    case 'in-a-unit':
      return nothing(item, 'It sits in a unit; work on that one');
    case 'listed':
      return bare(item, { do: 'sell', id: 'sell', headline: 'Record the sale when it is sold', why: offerWhy(item, currency) });
    case 'bought':
      return item.declined.has('receive') ? null : receive(item);
    case 'in-the-drawer':
      return adviceInDrawer(item, wellChance);
    default:
      return null;
  }
}

export const adviceInDrawer = (item: Item, wellChance: number): AdviceView =>
  nothing(item, 'Keep it for a unit that needs it', [`${percent(wellChance)} that it is well.`]);

const offerWhy = (item: Item, currency: string): string[] =>
  item.asking ? [`Offered for ${money(item.asking.priceMinor, currency)} at ${item.asking.place}.`] : [];

function receive(item: Item): AdviceView {
  const claims = item.history.filter((entry) => entry.kind === 'claim').length;
  const heard =
    claims > 0
      ? `Compare it with what the seller claims (${claims} ${claims === 1 ? 'claim' : 'claims'}).`
      : 'The seller claims nothing of it that is noted here.';
  return bare(item, {
    do: 'receive',
    id: 'receive',
    headline: 'Receive it: photograph it as it came, before it is opened',
    why: [heard, 'What is noted before anything is touched is evidence, for the diagnosis and for a dispute.'],
  });
}

/** For a unit whose model is not here: nothing can be derived. */
export const adviceWithoutModel = (item: Item): AdviceView =>
  nothing(item, `Its model "${item.modelId}" is not here`, [
    'Put its model file into the folder of models and start again; all that is recorded of it is kept.',
  ]);
