import { openedTo } from '../getting-there.ts';
import type { Remedy, Stakes } from '../model.ts';
import { mendedWorth, ruinedWorth } from '../repair-row.ts';
import { remedyCost } from '../workshop.ts';
import type { ReadingFault } from './reading-dictionary.ts';

/** Remedies laid out for the many beliefs that a choice looks ahead to: which rows each mends, with what chance. */
export interface Mending {
  readonly remedies: readonly Remedy[];
  readonly rows: readonly Int32Array[];
  readonly chances: readonly Float64Array[];
}

export function mendingOf(faults: readonly ReadingFault[], remedies: readonly Remedy[]): Mending {
  const rowOf = new Map(faults.map(({ id }, i) => [id, i + 1]));
  const effects = remedies.map(({ mends }) => Object.entries(mends).filter(([id, chance]) => rowOf.has(id) && chance > 0));
  return {
    remedies,
    rows: effects.map((each) => Int32Array.from(each, ([id]) => rowOf.get(id)!)),
    chances: effects.map((each) => Float64Array.from(each, ([, chance]) => chance)),
  };
}

const MAX_STEPS = 8;
/** A remedy that helps less often than this is no step. */
const LEAST_HELP = 0.004;

/**
 * Remedies one after another by chance per cost for one fault at a time, cut where giving up is worth more: indices, and the expected money. Row 0 of `chances` is a
 * unit that works; what the rows lack of 1 is a trouble that no remedy mends.
 */
export function quickRow(mending: Mending, chances: Float64Array, atStart: Stakes): { steps: number[]; expectedMinor: number } {
  const { remedies, rows, chances: mends } = mending;
  const left = chances.slice();
  const well = left[0]!;
  left[0] = 0;
  const open = candidates(mending, left);
  const taken: { index: number; cured: number; cost: number; alive: number }[] = [];
  let [alive, stakes] = [1 - well, atStart];
  while (taken.length < MAX_STEPS && alive > 1e-9) {
    let best = { index: -1, cured: 0, cost: 0, ratio: 0 };
    for (const index of open) {
      let cured = 0;
      const [own, by] = [rows[index]!, mends[index]!];
      for (let i = 0; i < own.length; i++) cured += left[own[i]!]! * by[i]!;
      if (cured < LEAST_HELP * alive) continue;
      const cost = remedyCost(remedies[index]!, stakes);
      const ratio = ((1 - remedies[index]!.risk) * cured) / Math.max(cost, 1e-3);
      if (ratio > best.ratio) best = { index, cured, cost, ratio };
    }
    if (best.index < 0) break;
    taken.push({ index: best.index, cured: best.cured, cost: best.cost, alive });
    const [own, by] = [rows[best.index]!, mends[best.index]!];
    for (let i = 0; i < own.length; i++) left[own[i]!]! *= 1 - by[i]!;
    alive -= best.cured;
    stakes = openedTo(stakes, remedies[best.index]!.stage);
    open.delete(best.index);
  }
  let [ahead, last] = [atStart.asIsMinor, 0];
  for (let i = taken.length - 1; i >= 0; i--) {
    const { index, cured, cost, alive: before } = taken[i]!;
    const { risk } = remedies[index]!;
    const chance = cured / before;
    const going = (1 - risk) * (chance * mendedWorth(atStart) + (1 - chance) * ahead) + risk * ruinedWorth(atStart) - cost;
    if (going > atStart.asIsMinor) {
      if (last <= i) last = i + 1;
      ahead = going;
    } else [ahead, last] = [atStart.asIsMinor, 0];
  }
  return { steps: taken.slice(0, last).map(({ index }) => index), expectedMinor: well * mendedWorth(atStart) + (1 - well) * ahead };
}

/** Remedies that help at all. */
function candidates({ rows, chances }: Mending, left: Float64Array): Set<number> {
  const open = new Set<number>();
  for (let index = 0; index < rows.length; index++) {
    const [own, by] = [rows[index]!, chances[index]!];
    let help = 0;
    for (let i = 0; i < own.length; i++) help += left[own[i]!]! * by[i]!;
    if (help >= LEAST_HELP) open.add(index);
  }
  return open;
}

/** What following these steps brings, by row; the last entry is for a trouble that no remedy mends. */
export function worthByRow(mending: Mending, steps: readonly number[], count: number, atStart: Stakes): Float64Array {
  const { remedies, rows, chances } = mending;
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
    const [own, by] = [rows[index]!, chances[index]!];
    for (let i = 0; i < own.length; i++) values[own[i]!] = by[i]! * mendedWorth(atStart) + (1 - by[i]!) * values[own[i]!]!;
    const lost = risk * ruinedWorth(atStart) - costs[s]!;
    for (let row = 0; row <= count; row++) values[row] = (1 - risk) * values[row]! + lost;
  }
  values[0] = mendedWorth(atStart);
  return values;
}
