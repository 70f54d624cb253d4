import { openedTo } from '../getting-there.ts';
import type { Remedy, Stakes } from '../model.ts';
import { DiagnosisError } from '../posterior-over-sets.ts';
import { mendedWorth, ruinedWorth } from '../repair-row.ts';
import { remedyCost } from '../workshop.ts';

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
}

export interface BestOrder {
  readonly steps: readonly OrderedStep[];
  /** Expected money from here on: what it brings when it works, or as it is when given up, less the cost on the way. */
  readonly expectedMinor: number;
  /** Every way in which it may end, with its money; the chances sum to 1. */
  readonly outcomes: readonly { readonly valueMinor: number; readonly chance: number }[];
}

/** So many remedies are put in order exactly. */
export const MOST_ORDERED = 8;

/**
 * The order of at most eight remedies, each followed by a trial, that brings the most expected money, and after which of them to give up: exact, by
 * backward induction over which have been tried, because what is left after failures does not depend on their order. What the chances lack of 1 is
 * a trouble that nothing mends. Throws DiagnosisError for more remedies.
 */
export function bestOrder(sets: readonly FaultSetChance[], remedies: readonly Remedy[], stakes: Stakes): BestOrder {
  if (remedies.length > MOST_ORDERED)
    throw new DiagnosisError('shape', `at most ${MOST_ORDERED} remedies can be ordered exactly, not ${remedies.length}`);
  const alive = Float64Array.from({ length: 1 << remedies.length }, (_, tried) => aliveAfter(sets, remedies, tried));
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
  const steps = stepsOf(remedies, choice, alive, stakes);
  return { steps, expectedMinor: (1 - alive[0]!) * mendedWorth(stakes) + worth[0]!, outcomes: endsOf(steps, alive[0]!, stakes) };
}

/** Chance that the unit does not work once these were tried. */
function aliveAfter(sets: readonly FaultSetChance[], remedies: readonly Remedy[], tried: number): number {
  const stays = (fault: string): number =>
    remedies.reduce((left, { mends }, a) => (tried & (1 << a) ? left * (1 - (mends[fault] ?? 0)) : left), 1);
  const works = sets.reduce((sum, { faults, chance }) => sum + chance * faults.reduce((all, fault) => all * (1 - stays(fault)), 1), 0);
  return Math.max(0, 1 - works);
}

const openedBy = (remedies: readonly Remedy[], tried: number, stakes: Stakes): Stakes =>
  remedies.reduce((opened, { stage }, a) => (tried & (1 << a) ? openedTo(opened, stage) : opened), stakes);

function stepsOf(remedies: readonly Remedy[], choice: Int8Array, alive: Float64Array, stakes: Stakes): OrderedStep[] {
  const steps: OrderedStep[] = [];
  let tried = 0;
  for (let a = choice[0]!; a >= 0; a = choice[tried]!) {
    const [remedy, after] = [remedies[a]!, tried | (1 << a)];
    const costMinor = remedyCost(remedy, openedBy(remedies, tried, stakes));
    steps.push({ remedy, chance: 1 - alive[after]! / alive[tried]!, costMinor });
    tried = after;
  }
  return steps;
}

function endsOf(steps: readonly OrderedStep[], broken: number, stakes: Stakes): BestOrder['outcomes'] {
  const outcomes = [{ valueMinor: mendedWorth(stakes), chance: 1 - broken }];
  let [reach, paid] = [broken, 0];
  for (const { remedy, chance, costMinor } of steps) {
    paid += costMinor;
    outcomes.push(
      { valueMinor: ruinedWorth(stakes) - paid, chance: reach * remedy.risk },
      { valueMinor: mendedWorth(stakes) - paid, chance: reach * (1 - remedy.risk) * chance },
    );
    reach *= (1 - remedy.risk) * (1 - chance);
  }
  outcomes.push({ valueMinor: stakes.asIsMinor - paid, chance: reach });
  return outcomes.filter(({ chance }) => chance > 0);
}
