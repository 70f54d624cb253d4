import type { DeviceModel } from './model.ts';
import type { StateSpace } from './state-space.ts';

/** Chance of noting any one kind of thing where nothing is wrong; common practice, no source: old devices are dirty, and eyes err. */
const FALSE_ALARM = 0.02;
/** Chance of noting nothing where nothing is wrong. */
const RIGHTLY_NOTHING = 0.9;
/** However plain a fault looks, this share of looks misses it. */
const OVERLOOKED = 0.03;
/** What a look finds when the trouble is not in the model. */
const OF_UNKNOWN = { something: 0.08, nothing: 0.6 };

/** Chance of one kind of finding at a block, one entry a state. */
export function findingChances(model: DeviceModel, space: StateSpace, block: string, sees: string): Float64Array {
  const here = model.faults.map((fault) => fault.block === block);
  return Float64Array.from(space.members, (faults, state) => {
    if (state === space.unknown) return sees === 'nothing-wrong' ? OF_UNKNOWN.nothing : OF_UNKNOWN.something;
    const present = faults.filter((fault) => here[fault]);
    return sees === 'nothing-wrong' ? nothingChance(model, present) : somethingChance(model, present, sees);
  });
}

function nothingChance(model: DeviceModel, present: readonly number[]): number {
  return present.reduce((chance, fault) => {
    const seen = Object.values(model.faults[fault]!.seen).reduce((a, b) => a + b, 0);
    return chance * (1 - Math.min(seen, 1 - OVERLOOKED));
  }, RIGHTLY_NOTHING);
}

function somethingChance(model: DeviceModel, present: readonly number[], sees: string): number {
  const missed = present.reduce((chance, fault) => chance * (1 - (model.faults[fault]!.seen[sees] ?? 0)), 1);
  return FALSE_ALARM + (1 - FALSE_ALARM) * (1 - missed);
}

/** Kinds that a fault of the block may show, and "nothing-wrong": the outcomes of a look that are worth telling apart. */
export function findingKinds(model: DeviceModel, block: string): string[] {
  const kinds = new Set(model.faults.filter((fault) => fault.block === block).flatMap((fault) => Object.keys(fault.seen)));
  return [...kinds, 'nothing-wrong'];
}
