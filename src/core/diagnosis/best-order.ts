import { openedTo } from './getting-there.ts';
import type { Remedy, Stakes } from './model.ts';
import { DiagnosisError } from './posterior-over-sets.ts';
import { mendedWorth, ruinedWorth } from './repair-row.ts';
import { remedyCost, remedyMinutes } from './workshop.ts';

/** Faults that may be there together, with their chance; none is a unit that works. */
export interface FaultSetChance {
  readonly faults: readonly string[];
  readonly chance: number;
}

export interface OrderedStep {
  readonly remedy: Remedy;
  /** Chance that the unit works after it, given that it did not before; ruin excluded. */
  readonly chance: number;
  readonly costMinor: number;
  readonly minutes: number;
}

export interface BestOrder {
  readonly steps: readonly OrderedStep[];
  /** Expected money from here on: what it brings when it works, or as it is when given up, less the cost on the way. */
  readonly expectedMinor: number;
}

/** So many remedies are put in order exactly. */
export const MOST_ORDERED = 8;

/**
 * The order of at most eight remedies, each followed by a trial, that brings the most expected money, and after which of them to give up: exact, by
 * backward induction over which have been tried (Held & Karp 1962, their recursion over sets), because what is left after failures does not depend on their order. What
 * the chances lack of 1 is a trouble that nothing mends. Throws DiagnosisError for more remedies.
 */
export function bestOrder(sets: readonly FaultSetChance[], remedies: readonly Remedy[], stakes: Stakes): BestOrder {
  if (remedies.length > MOST_ORDERED)
    throw new DiagnosisError('shape', `at most ${MOST_ORDERED} remedies can be ordered exactly, not ${remedies.length}`);
  const alive = aliveAfter(sets, remedies);
  const worth = new Float64Array(alive.length);
  const choice = new Int8Array(alive.length).fill(-1);
  for (let tried = alive.length - 1; tried >= 0; tried--) {
    worth[tried] = alive[tried]! * stakes.asIsMinor;
    const opened = openedBy(remedies, tried, stakes);
    remedies.forEach((remedy, a) => {
      const after = tried | (1 << a);
      if (after === tried) return;
      const lost = alive[tried]! * (remedy.risk * ruinedWorth(stakes) - remedyCost(remedy, opened));
      const going = lost + (1 - remedy.risk) * ((alive[tried]! - alive[after]!) * mendedWorth(stakes) + worth[after]!);
      if (going <= worth[tried]! + 1e-9) return;
      worth[tried] = going;
      choice[tried] = a;
    });
  }
  return { steps: stepsOf(remedies, choice, alive, stakes), expectedMinor: (1 - alive[0]!) * mendedWorth(stakes) + worth[0]! };
}

/** By which were tried, as bits, the chance that the unit does not work once they were. */
function aliveAfter(sets: readonly FaultSetChance[], remedies: readonly Remedy[]): Float64Array {
  const gone = new Map<string, Float64Array>();
  for (const { faults } of sets) for (const fault of faults) if (!gone.has(fault)) gone.set(fault, goneAfter(fault, remedies));
  const alive = new Float64Array(1 << remedies.length).fill(1);
  for (const { faults, chance } of sets) {
    const byFault = faults.map((fault) => gone.get(fault)!);
    for (let tried = 0; tried < alive.length; tried++) alive[tried]! -= byFault.reduce((all, each) => all * each[tried]!, chance);
  }
  return alive.map((each) => Math.max(0, each));
}

/** The same for one fault: the chance that it is gone. */
function goneAfter(fault: string, remedies: readonly Remedy[]): Float64Array {
  const stays = new Float64Array(1 << remedies.length).fill(1);
  for (let tried = 1; tried < stays.length; tried++) {
    const last = 31 - Math.clz32(tried);
    stays[tried] = stays[tried & ~(1 << last)]! * (1 - (remedies[last]!.mends[fault] ?? 0));
  }
  return stays.map((each) => 1 - each);
}

const openedBy = (remedies: readonly Remedy[], tried: number, stakes: Stakes): Stakes =>
  remedies.reduce((opened, { stage }, a) => (tried & (1 << a) ? openedTo(opened, stage) : opened), stakes);

function stepsOf(remedies: readonly Remedy[], choice: Int8Array, alive: Float64Array, stakes: Stakes): OrderedStep[] {
  const steps: OrderedStep[] = [];
  let tried = 0;
  for (let a = choice[0]!; a >= 0; a = choice[tried]!) {
    const [remedy, after] = [remedies[a]!, tried | (1 << a)];
    const opened = openedBy(remedies, tried, stakes);
    const chance = 1 - alive[after]! / alive[tried]!;
    steps.push({ remedy, chance, costMinor: remedyCost(remedy, opened), minutes: remedyMinutes(remedy, opened) });
    tried = after;
  }
  return steps;
}
