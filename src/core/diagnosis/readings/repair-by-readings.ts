import type { Remedy, Stakes } from '../model.ts';
import { remedyCost } from '../workshop.ts';
import { bestOrder, MOST_ORDERED, type BestOrder } from './best-order.ts';
import type { ReadingBelief } from './reading-belief.ts';

/** What to do about the belief: the best order of the eight remedies with the most chance per cost, and after which to give up. */
export function repairByReadings(belief: ReadingBelief, remedies: readonly Remedy[], stakes: Stakes): BestOrder {
  const help = ({ mends, risk }: Remedy): number =>
    (1 - risk) * Object.entries(mends).reduce((sum, [fault, chance]) => sum + chance * (belief.marginal.get(fault) ?? 0), 0);
  const ratio = (remedy: Remedy): number => help(remedy) / Math.max(remedyCost(remedy, stakes), 1e-3);
  const chosen = remedies
    .filter((remedy) => help(remedy) > 0)
    .sort((a, b) => ratio(b) - ratio(a))
    .slice(0, MOST_ORDERED);
  return bestOrder(belief.sets, chosen, stakes);
}

/** The remedy that serves all of a group: most sure to mend whichever of them is there, then cheapest; undefined when none mends each. */
export function remedyForAll(faults: readonly string[], remedies: readonly Remedy[], stakes: Stakes): Remedy | undefined {
  const surely = ({ mends }: Remedy): number => Math.min(...faults.map((fault) => mends[fault] ?? 0));
  return remedies
    .filter((remedy) => surely(remedy) > 0)
    .sort((a, b) => surely(b) * (1 - b.risk) - surely(a) * (1 - a.risk) || remedyCost(a, stakes) - remedyCost(b, stakes))[0];
}
