import type { Behaviour, DeviceModel, Fault } from './model.ts';
import { DiagnosisError } from './posterior-over-sets.ts';
import { productByState, type StateSpace } from './state-space.ts';

/** Chance of each way to behave, one entry a state; the three of a state sum to 1. */
export type Behaviours = Readonly<Record<Behaviour, Float64Array>>;

/** From best to worst. */
const WAYS = ['works', 'comes-and-goes', 'fails'] as const;

/** How "something that is not in the model" shows in any one function: it explains everything, and nothing well. */
const OF_UNKNOWN: Readonly<Record<Behaviour, number>> = { works: 0.45, 'comes-and-goes': 0.15, fails: 0.4 };

/** Share of observations that say nothing about the unit (a slip, a mix-up): even over all that could have been noted. */
export const SLIP = 0.03;

/**
 * How each state makes a function behave when it is tried with known-good accessories and with some blocks absent: a need is
 * met by the best of its blocks, the function is as good as its worst need, a block as its worst fault. Slips are included.
 * Faults behave independently of each other, and anew for each function. Throws DiagnosisError on a name that the model lacks.
 */
export function behavioursOf(
  model: DeviceModel,
  space: StateSpace,
  functionId: string,
  accessories: readonly string[],
  absent: ReadonlySet<string>,
): Behaviours {
  const needs = openNeeds(model, functionId, accessories, absent);
  if (needs.some((need) => need.length === 0)) return evenly(space, { works: 0, 'comes-and-goes': 0, fails: 1 });
  const stoodIn = new Set(model.accessories.filter(({ id }) => accessories.includes(id)).map(({ block }) => block));
  const result = ofDecisive(model, space, functionId, new Set(needs.flatMap((need) => (need.length === 1 ? need : []))), stoodIn);
  for (const state of statesThatMeetBoth(model, space, functionId, needs))
    put(result, state, throughAlternatives(model, needs, space.members[state]!));
  put(result, space.unknown, OF_UNKNOWN);
  return result;
}

function put(result: Behaviours, state: number, chances: Readonly<Record<Behaviour, number>>): void {
  for (const way of WAYS) result[way][state] = (1 - SLIP) * chances[way] + SLIP / 3;
}

function evenly(space: StateSpace, chances: Readonly<Record<Behaviour, number>>): Behaviours {
  const filled = (way: Behaviour): Float64Array => new Float64Array(space.size).fill((1 - SLIP) * chances[way] + SLIP / 3);
  return { works: filled('works'), 'comes-and-goes': filled('comes-and-goes'), fails: filled('fails') };
}

/** As if needs with alternatives were always met: as bad as the worst fault in a block that alone meets a need. */
function ofDecisive(
  model: DeviceModel,
  space: StateSpace,
  functionId: string,
  decisive: ReadonlySet<string>,
  stoodIn: ReadonlySet<string>,
): Behaviours {
  /** Chance that the fault matters: its circuit says so, or its block alone meets a need. */
  const matters = (fault: Fault): number => {
    const works = fault.works?.[functionId];
    if (works !== undefined) return stoodIn.has(fault.block) ? 0 : 1 - works;
    return decisive.has(fault.block) ? 1 : 0;
  };
  const of = (chance: (fault: Fault) => number): Float64Array =>
    productByState(
      space,
      Float64Array.from(model.faults, (fault) => 1 - matters(fault) * (1 - chance(fault))),
    );
  const works = of(({ behaves }) => behaves.works);
  const holds = of(({ behaves }) => 1 - behaves.fails);
  const sometimes = new Float64Array(space.size);
  const fails = new Float64Array(space.size);
  for (let s = 0; s < space.size; s++) {
    sometimes[s] = (1 - SLIP) * Math.max(0, holds[s]! - works[s]!) + SLIP / 3;
    fails[s] = (1 - SLIP) * (1 - holds[s]!) + SLIP / 3;
    works[s] = (1 - SLIP) * works[s]! + SLIP / 3;
  }
  return { works, 'comes-and-goes': sometimes, fails };
}

/** Pairs of faults that hit both alternatives of a need; fewer faults, or more alternatives, leave one that is healthy. What the circuit says of is not asked of blocks. */
function statesThatMeetBoth(model: DeviceModel, space: StateSpace, functionId: string, needs: readonly (readonly string[])[]): number[] {
  const inBlock = (block: string): number[] =>
    [...model.faults.keys()].filter((fault) => {
      const { block: own, works } = model.faults[fault]!;
      return own === block && works?.[functionId] === undefined;
    });
  return needs.flatMap((need) => {
    const [one, other] = need;
    if (need.length !== 2) return [];
    return inBlock(one!).flatMap((a) =>
      inBlock(other!)
        .map((b) => space.indexOf(a, b))
        .filter((state) => state >= 0),
    );
  });
}

/** Needs that are not met by a known-good accessory already, without absent blocks; an empty one cannot be met. */
function openNeeds(model: DeviceModel, functionId: string, accessories: readonly string[], absent: ReadonlySet<string>): string[][] {
  const found = model.functions.find(({ id }) => id === functionId);
  if (!found) throw new DiagnosisError('unknown-name', `the model has no function "${functionId}"`);
  const good = new Set(model.accessories.filter(({ id }) => accessories.includes(id)).map(({ block }) => block));
  return found.needs.filter((need) => !need.some((id) => good.has(id))).map((need) => [...new Set(need)].filter((id) => !absent.has(id)));
}

/** Adds up all combinations of how these faults may behave. */
function throughAlternatives(
  model: DeviceModel,
  needs: readonly (readonly string[])[],
  faults: readonly number[],
): Record<Behaviour, number> {
  const total = { works: 0, 'comes-and-goes': 0, fails: 0 };
  const badness = new Map<string, number>();
  const visit = (at: number, chance: number): void => {
    if (at === faults.length) {
      const worst = Math.max(...needs.map((need) => Math.min(...need.map((block) => badness.get(block) ?? 0))));
      total[WAYS[worst]!] += chance;
      return;
    }
    const { block, behaves } = model.faults[faults[at]!]!;
    const before = badness.get(block) ?? 0;
    WAYS.forEach((way, bad) => {
      badness.set(block, Math.max(before, bad));
      visit(at + 1, chance * behaves[way]);
    });
    badness.set(block, before);
  };
  visit(0, 1);
  return total;
}
