import { openedTo } from '../getting-there.ts';
import type { Remedy, Stakes } from '../model.ts';
import { mendedWorth, ruinedWorth } from '../repair-row.ts';
import { remedyCost } from '../workshop.ts';
import type { ReadingFault } from './reading-dictionary.ts';

/** Remedies laid out for the many beliefs that a choice looks ahead to: which rows each mends, with what chance, one remedy after another. */
export interface Mending {
  readonly remedies: readonly Remedy[];
  /** Where the entries of a remedy begin; one more than there are remedies. */
  readonly from: Int32Array;
  readonly rows: Int32Array;
  readonly chances: Float64Array;
}

export function mendingOf(faults: readonly ReadingFault[], remedies: readonly Remedy[]): Mending {
  const rowOf = new Map(faults.map(({ id }, i) => [id, i + 1]));
  const effects = remedies.map(({ mends }) => Object.entries(mends).filter(([id, chance]) => rowOf.has(id) && chance > 0));
  const from = new Int32Array(remedies.length + 1);
  effects.forEach((each, i) => (from[i + 1] = from[i]! + each.length));
  return {
    remedies,
    from,
    rows: Int32Array.from(effects.flat(), ([id]) => rowOf.get(id)!),
    chances: Float64Array.from(effects.flat(), ([, chance]) => chance),
  };
}

const MAX_STEPS = 8;
/** A remedy that helps less often than this is no step. */
const LEAST_HELP = 0.004;
/** So many remedies with the most chance per cost are thought of in one look ahead. */
const CANDIDATES = 12;

interface Taken {
  readonly index: number;
  readonly chance: number;
  readonly cost: number;
}

/**
 * Remedies one after another by chance per cost for one fault at a time, cut where giving up is worth more: indices, and the expected money. Row 0 of `chances` is a
 * unit that works; what the rows lack of 1 is a trouble that no remedy mends.
 */
export function quickRow(mending: Mending, chances: Float64Array, atStart: Stakes): { steps: number[]; expectedMinor: number } {
  const well = chances[0]!;
  const taken = rollOut(mending, chances, atStart);
  let [ahead, last] = [atStart.asIsMinor, 0];
  for (let i = taken.length - 1; i >= 0; i--) {
    const { index, chance, cost } = taken[i]!;
    const { risk } = mending.remedies[index]!;
    const going = (1 - risk) * (chance * mendedWorth(atStart) + (1 - chance) * ahead) + risk * ruinedWorth(atStart) - cost;
    if (going > atStart.asIsMinor) {
      if (last <= i) last = i + 1;
      ahead = going;
    } else [ahead, last] = [atStart.asIsMinor, 0];
  }
  return { steps: taken.slice(0, last).map(({ index }) => index), expectedMinor: well * mendedWorth(atStart) + (1 - well) * ahead };
}

function rollOut(mending: Mending, chances: Float64Array, atStart: Stakes): Taken[] {
  const left = chances.slice();
  left[0] = 0;
  const open = candidates(mending, left, atStart);
  const taken: Taken[] = [];
  let [alive, stakes] = [1 - chances[0]!, atStart];
  while (taken.length < MAX_STEPS && alive > 1e-9) {
    let best = { at: -1, cured: 0, cost: 0, ratio: 0 };
    open.forEach((index, at) => {
      const cured = curedBy(mending, index, left);
      if (cured < LEAST_HELP * alive) return;
      const cost = remedyCost(mending.remedies[index]!, stakes);
      const ratio = ratioOf(mending.remedies[index]!, cured, cost);
      if (ratio > best.ratio) best = { at, cured, cost, ratio };
    });
    if (best.at < 0) break;
    const [index] = open.splice(best.at, 1);
    taken.push({ index: index!, chance: Math.min(1, best.cured / alive), cost: best.cost });
    for (let i = mending.from[index!]!; i < mending.from[index! + 1]!; i++) left[mending.rows[i]!]! *= 1 - mending.chances[i]!;
    alive -= best.cured;
    stakes = openedTo(stakes, mending.remedies[index!]!.stage);
  }
  return taken;
}

const ratioOf = ({ risk }: Remedy, cured: number, cost: number): number => ((1 - risk) * cured) / Math.max(cost, 1e-3);

function curedBy({ from, rows, chances }: Mending, index: number, left: Float64Array): number {
  let cured = 0;
  for (let i = from[index]!; i < from[index + 1]!; i++) cured += left[rows[i]!]! * chances[i]!;
  return cured;
}

function candidates(mending: Mending, left: Float64Array, stakes: Stakes): number[] {
  const found: { index: number; ratio: number }[] = [];
  mending.remedies.forEach((remedy, index) => {
    const cured = curedBy(mending, index, left);
    if (cured >= LEAST_HELP) found.push({ index, ratio: ratioOf(remedy, cured, remedyCost(remedy, stakes)) });
  });
  return found
    .sort((a, b) => b.ratio - a.ratio)
    .slice(0, CANDIDATES)
    .map(({ index }) => index);
}

/** What following these steps brings, by row; the last entry is for a trouble that no remedy mends. */
export function worthByRow(mending: Mending, steps: readonly number[], count: number, atStart: Stakes): Float64Array {
  const { remedies, from, rows, chances } = mending;
  const values = new Float64Array(count + 1).fill(atStart.asIsMinor);
  const costs: number[] = [];
  let stakes = atStart;
  for (const index of steps) {
    costs.push(remedyCost(remedies[index]!, stakes));
    stakes = openedTo(stakes, remedies[index]!.stage);
  }
  for (let s = steps.length - 1; s >= 0; s--) {
    const index = steps[s]!;
    const { risk } = remedies[index]!;
    for (let i = from[index]!; i < from[index + 1]!; i++)
      values[rows[i]!] = chances[i]! * mendedWorth(atStart) + (1 - chances[i]!) * values[rows[i]!]!;
    const lost = risk * ruinedWorth(atStart) - costs[s]!;
    for (let row = 0; row <= count; row++) values[row] = (1 - risk) * values[row]! + lost;
  }
  values[0] = mendedWorth(atStart);
  return values;
}
