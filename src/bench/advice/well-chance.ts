import type { Belief } from '../../core/diagnosis/index.ts';
import type { Model } from '../models/index.ts';

/** What of a belief counts here. */
export type Sets = Pick<Belief, 'sets' | 'unknown'>;

/**
 * Chance that every one of these blocks is well. "Something that is not in the model" may sit anywhere: it spares
 * them in proportion to the blocks that they are not.
 */
export function wellChance(model: Model, belief: Sets, blocks: readonly string[]): number {
  const faulty = faultsIn(model, blocks);
  const known = belief.sets.reduce((sum, set) => (set.faults.some((fault) => faulty.has(fault)) ? sum : sum + set.chance), 0);
  return clamp(known + belief.unknown * shareSpared(model, blocks));
}

/** Chance that a block has a fault of the model. */
export function faultyChance(model: Model, belief: Sets, block: string): number {
  const faulty = faultsIn(model, [block]);
  return clamp(belief.sets.reduce((sum, set) => (set.faults.some((fault) => faulty.has(fault)) ? sum + set.chance : sum), 0));
}

/** Part of the unknown that does not touch these blocks. */
export const shareSpared = (model: Model, blocks: readonly string[]): number => 1 - blocks.length / model.file.blocks.length;

export const faultsIn = (model: Model, blocks: readonly string[]): ReadonlySet<string> =>
  new Set(model.file.faults.filter((fault) => blocks.includes(fault.block)).map((fault) => fault.id));

/** A chance again after sums that may end a hair outside of 0 to 1. */
export const clamp = (chance: number): number => Math.min(1, Math.max(0, chance));
