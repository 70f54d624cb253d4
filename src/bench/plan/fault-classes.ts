import { WORKS } from '../../core/planning/index.ts';
import type { Judged } from '../advice/beliefs.ts';
import { faultsIn, shareSpared } from '../advice/well-chance.ts';

/** One thing that may be wrong with an assembly: a set of faults, by its name. */
export interface FaultClass {
  readonly id: string;
  readonly chance: number;
  readonly faults: readonly string[];
  /** Something that the model does not know: nothing mends it. */
  readonly unknown: boolean;
}

/** So many sets are told apart; the rarest beyond count as unknown, so that nothing mends them. */
const MOST = 24;
const UNKNOWN = 'unknown';

/**
 * What may be wrong within these blocks, most likely first, `works` among it; the chances sum to 1. From the believed sets of the whole
 * unit, each cut down to the blocks. What is not in the model may sit anywhere, in proportion to the blocks.
 */
export function faultClasses({ model, belief, alone }: Judged, blocks: readonly string[]): FaultClass[] {
  const own = faultsIn(model, blocks);
  const spared = alone ? 0 : shareSpared(model, blocks);
  const byName = new Map<string, { chance: number; faults: readonly string[] }>();
  const add = (faults: readonly string[], chance: number): void => {
    const name = faults.length === 0 ? WORKS : [...faults].sort().join('+');
    byName.set(name, { faults, chance: (byName.get(name)?.chance ?? 0) + chance });
  };
  add([], belief.unknown * spared);
  for (const { faults, chance } of belief.sets)
    if (chance > 0)
      add(
        faults.filter((fault) => own.has(fault)),
        chance,
      );
  const sorted = [...byName].map(([id, of]) => ({ id, ...of, unknown: false })).sort((a, b) => b.chance - a.chance);
  const told = [...sorted.filter(({ id }) => id === WORKS), ...sorted.filter(({ id }) => id !== WORKS).slice(0, MOST)];
  const known = told.reduce((sum, { chance }) => sum + chance, 0);
  const total = Math.max(known, 1e-9);
  const left = 1 - Math.min(1, known);
  if (left < 1e-9) return told.map((each) => ({ ...each, chance: each.chance / total }));
  return [...told, { id: UNKNOWN, chance: left, faults: [], unknown: true }];
}
