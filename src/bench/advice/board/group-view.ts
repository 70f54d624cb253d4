import type { Belief } from '../../../core/diagnosis/index.ts';
import type { Model } from '../../models/index.ts';
import type { BeliefView } from '../../views/index.ts';
import { clamp } from '../well-chance.ts';
import { namedFault } from '../named-fault.ts';
import type { BoardModel } from './board-model.ts';

type Remedies = Model['file']['remedies'];

const LEAST_CHANCE = 0.005;
const MOST_GROUPS = 8;
/** Members of a group that are named. */
export const MOST_ALIKE = 12;

/** Groups of faults that no check tells apart, likeliest first, each with the remedy that serves all its likely members. */
export function groupViews(known: BoardModel, { marginal }: Belief): BeliefView['groups'] {
  const members = new Map<number, { id: string; chance: number }[]>();
  for (const [id, group] of known.groups()) members.set(group, [...(members.get(group) ?? []), { id, chance: marginal.get(id) ?? 0 }]);
  return [...members]
    .map(([group, faults]) => ({
      group,
      faults: faults.sort((a, b) => b.chance - a.chance),
      chance: faults.reduce((sum, each) => sum + each.chance, 0),
    }))
    .filter(({ faults, chance }) => faults.length > 1 && chance >= LEAST_CHANCE)
    .sort((a, b) => b.chance - a.chance)
    .slice(0, MOST_GROUPS)
    .map(({ group, faults, chance }) => ({
      faults: faults.slice(0, MOST_ALIKE).map(({ id }) => namedFault(known.model, id)),
      chance: clamp(chance),
      like_healthy: group === 0,
      remedy: servesAll(known.model.file.remedies, likely(faults, chance)),
    }));
}

/** Members that make up nearly all of the chance of a group. */
function likely(faults: readonly { readonly id: string; readonly chance: number }[], chance: number): string[] {
  return faults.filter((each) => each.chance >= 0.02 * chance).map(({ id }) => id);
}

/** The remedy most sure to mend whichever of the faults is there, then the quickest; null when none mends each. */
export function servesAll(remedies: Remedies, faults: readonly string[]): { id: string; name: string } | null {
  const surely = ({ mends, risk }: Remedies[number]): number => (1 - risk) * Math.min(...faults.map((fault) => mends[fault] ?? 0));
  const [best] = remedies
    .map((remedy) => ({ remedy, sure: surely(remedy) }))
    .filter(({ remedy, sure }) => sure > 0 && remedy.kind !== 'transplant')
    .sort((a, b) => b.sure - a.sure || a.remedy.minutes - b.remedy.minutes);
  return best ? { id: best.remedy.id, name: best.remedy.name } : null;
}
