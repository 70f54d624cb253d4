import { SLIP } from './behaviour.ts';
import type { DeviceModel } from './model.ts';
import { productByState, type StateSpace } from './state-space.ts';

/** What a look finds where the faults do not explain it; common practice, no source: old devices are dirty, and eyes err. */
const FALSE_ALARM = 0.02;
/** The least chance of noting a kind of thing at a block with a fault that the model does not connect with it. */
const HINT = 0.05;
/** What a look finds when the trouble is not in the model. */
const OF_UNKNOWN = { something: 0.1, nothing: 0.75 };
/** So many kinds of finding share a slip among them. */
const KINDS = 15;
/** What is plain to see at one part: only a slip notes it where it is not, and seldom, for one looks twice. Common practice, no source. */
const PLAIN: ReadonlySet<string> = new Set(['missing', 'bridged']);
const LOOKED_TWICE = 0.1;

export const NOTHING_WRONG = 'nothing-wrong';
/** Outcome of a look at a block for which the model tells no kind of finding. */
const SOMETHING_WRONG = 'something-wrong';

/**
 * Chance of noting a kind of finding (or that nothing is wrong) at a block, one entry a state. Kinds may come together, so
 * they do not sum to 1. A block that is absent shows nothing of its faults: all states alike.
 * Of one `part` only its own faults show, and false alarms and slips fall on any one part that much more seldom.
 */
export function findingChances(
  model: DeviceModel,
  space: StateSpace,
  block: string,
  sees: string,
  absent: ReadonlySet<string>,
  part?: string,
): Float64Array {
  if (absent.has(block)) return new Float64Array(space.size).fill(0.5);
  const nothing = sees === NOTHING_WRONG;
  const isPlain = part !== undefined && PLAIN.has(sees);
  const hint = isPlain ? 0 : HINT;
  const unseen = Float64Array.from(model.faults, (fault) => {
    if (fault.block !== block || (part !== undefined && fault.part !== part)) return 1;
    return nothing ? hidden(fault.seen) : 1 - Math.max(fault.seen[sees] ?? 0, hint);
  });
  const chances = productByState(space, unseen);
  const share = (part === undefined ? 1 : 1 / (model.parts ?? 1)) * (isPlain ? LOOKED_TWICE : 1);
  const alarm = isPlain ? 0 : FALSE_ALARM * share;
  for (let s = 0; s < space.size; s++) {
    const missed = (1 - alarm) * chances[s]!;
    chances[s] = nothing ? (1 - SLIP) * missed + SLIP / 2 : (1 - SLIP) * (1 - missed) + (SLIP / KINDS) * share;
  }
  chances[space.unknown] = nothing ? OF_UNKNOWN.nothing : OF_UNKNOWN.something * share;
  return chances;
}

/** Chance that a fault shows none of its kinds. */
const hidden = (seen: Readonly<Record<string, number>>): number => Object.values(seen).reduce((chance, p) => chance * (1 - p), 1);

/** Outcomes of one look at a block and their chances by state, which sum to 1 over the outcomes: the most telling kind is what counts. */
export function lookOutcomes(model: DeviceModel, space: StateSpace, block: string, absent: ReadonlySet<string>): [string, Float64Array][] {
  const kinds = [...new Set(model.faults.flatMap((fault) => (fault.block === block ? Object.keys(fault.seen) : [])))];
  if (kinds.length === 0) kinds.push(SOMETHING_WRONG);
  const nothing = findingChances(model, space, block, NOTHING_WRONG, absent);
  const each = kinds.map((kind): [string, Float64Array] => [kind, findingChances(model, space, block, kind, absent)]);
  const sums = nothing.map((_, state) => each.reduce((sum, [, chances]) => sum + chances[state]!, 0));
  return [
    [NOTHING_WRONG, nothing],
    ...each.map(([kind, chances]): [string, Float64Array] => [kind, chances.map((p, state) => ((1 - nothing[state]!) * p) / sums[state]!)]),
  ];
}
