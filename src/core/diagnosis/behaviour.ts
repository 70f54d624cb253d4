import type { Behaviour, DeviceModel } from './model.ts';
import type { StateSpace } from './state-space.ts';

/** Chances of the three ways to behave; they sum to 1. */
export type Behaviours = Readonly<Record<Behaviour, number>>;

const WORKS: Behaviours = { works: 1, 'comes-and-goes': 0, fails: 0 };
const FAILS: Behaviours = { works: 0, 'comes-and-goes': 0, fails: 1 };

/** How "something that is not in the model" shows in any one function: it explains everything, and nothing well. */
const OF_UNKNOWN: Behaviours = { works: 0.45, 'comes-and-goes': 0.15, fails: 0.4 };

/** Share of observations that say nothing at all about the unit (a slip, a mix-up): uniform over the three. */
export const SLIP = 0.03;

/**
 * How each state makes a function behave when it is tried with known-good accessories and with some blocks absent: a need is met by the best of its
 * blocks, the function is as good as its worst need, a block as its worst fault. One entry a state.
 */
export function behavioursOf(
  model: DeviceModel,
  space: StateSpace,
  functionId: string,
  accessories: readonly string[],
  absent: ReadonlySet<string>,
): Behaviours[] {
  const needs = model.functions.find(({ id }) => id === functionId)?.needs ?? [];
  const good = new Set(model.accessories.filter(({ id }) => accessories.includes(id)).map(({ block }) => block));
  const blockOf = (fault: number): string => model.faults[fault]!.block;
  const block = (id: string, faults: readonly number[]): Behaviours => {
    if (good.has(id)) return WORKS;
    if (absent.has(id)) return FAILS;
    return faults.reduce((worst, fault) => (blockOf(fault) === id ? worstOf(worst, model.faults[fault]!.behaves) : worst), WORKS);
  };
  return space.members.map((faults, state) => {
    if (state === space.unknown) return OF_UNKNOWN;
    return needs.reduce((worst, need) => worstOf(worst, need.map((id) => block(id, faults)).reduce(bestOf)), WORKS);
  });
}

function worstOf(a: Behaviours, b: Behaviours): Behaviours {
  if (a === WORKS) return b;
  const works = a.works * b.works;
  const fails = 1 - (1 - a.fails) * (1 - b.fails);
  return { works, fails, 'comes-and-goes': 1 - works - fails };
}

function bestOf(a: Behaviours, b: Behaviours): Behaviours {
  const fails = a.fails * b.fails;
  const works = 1 - (1 - a.works) * (1 - b.works);
  return { works, fails, 'comes-and-goes': 1 - works - fails };
}

/** Chance of seeing an outcome, slips included. */
export const chanceOf = (behaviours: Behaviours, outcome: Behaviour): number => (1 - SLIP) * behaviours[outcome] + SLIP / 3;
