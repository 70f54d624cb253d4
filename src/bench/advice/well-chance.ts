import type { Belief } from '../../core/diagnosis/index.ts';
import type { Model } from '../models/index.ts';
import { blocksOfSlot } from './device-model.ts';

/** What of a belief counts here. */
export type Sets = Pick<Belief, 'sets' | 'unknown' | 'absent' | 'none'>;

/**
 * Chance that every one of these blocks is there and well. "Something that is not in the model" may sit anywhere: it
 * spares them in proportion to the blocks that they are not.
 */
export const wellChance = (model: Model, belief: Sets, blocks: readonly string[]): number =>
  faultless(model, belief, blocks, shareSpared(model, blocks));

/** Chance that what sits in a slot is well. Of an assembly judged alone, what is unknown is in it. 0 for a slot that the model does not know. */
export function slotWell({ model, belief, alone }: { model: Model; belief: Sets; alone: boolean }, slot: string): number {
  const blocks = blocksOfSlot(model.file, slot);
  if (blocks.length === 0) return 0;
  return faultless(model, belief, blocks, alone ? 0 : shareSpared(model, blocks));
}

function faultless(model: Model, belief: Sets, blocks: readonly string[], spared: number): number {
  if (blocks.some((block) => belief.absent.has(block))) return 0;
  const faulty = faultsIn(model, blocks);
  const known = belief.sets.reduce((sum, set) => (set.faults.some((fault) => faulty.has(fault)) ? sum : sum + set.chance), 0);
  return clamp(known + belief.unknown * spared);
}

/** Chance that a block has a fault of the model, or is not there. */
export function faultyChance(model: Model, belief: Sets, block: string): number {
  if (belief.absent.has(block)) return 1;
  const faulty = faultsIn(model, [block]);
  return clamp(belief.sets.reduce((sum, set) => (set.faults.some((fault) => faulty.has(fault)) ? sum + set.chance : sum), 0));
}

/** Chance that all is there and nothing is wrong with it. */
export const nothingWrong = (belief: Sets): number => (belief.absent.size > 0 ? 0 : clamp(belief.none));

/** Part of the unknown that does not touch these blocks. */
export const shareSpared = (model: Model, blocks: readonly string[]): number => 1 - blocks.length / model.file.blocks.length;

export const faultsIn = (model: Model, blocks: readonly string[]): ReadonlySet<string> =>
  new Set(model.file.faults.filter((fault) => blocks.includes(fault.block)).map((fault) => fault.id));

/** A chance again after sums that may end a hair outside of 0 to 1. */
export const clamp = (chance: number): number => Math.min(1, Math.max(0, chance));
