import { openedTo } from '../../src/core/diagnosis/getting-there.ts';
import { repairPlan, type Belief, type DeviceModel, type Evidence, type RankedCheck, type Stakes } from '../../src/core/diagnosis/index.ts';
import type { BenchState } from '../../src/core/diagnosis/readings/index.ts';
import { AT_FIRST } from './diagnosis-sessions.ts';
import type { HiddenFault } from './models-truth.ts';
import type { Knower } from './models-knower.ts';

/** How one device was worked on. */
export interface Finished {
  readonly truth: HiddenFault;
  readonly belief: Belief;
  readonly checks: number;
  readonly minutes: number;
  /** What the working device would bring less what came of it, minutes paid. */
  readonly costMinor: number;
}

export const STAKES: Stakes = {
  workingMinor: 7200,
  asIsMinor: 2400,
  hourMinor: 1500,
  openingMinutes: { open: 6, 'board-out': 5 },
  stage: 'closed',
};
/** Sure enough, told too little, and asked too much. */
const SURE = 0.9;
const LEAST_BITS = 0.1;
export const MOST_CHECKS = 12;

/**
 * Tries every function once, then does what tells most per minute until one block has 90 % of the belief, nothing tells 0.1 bits, or twelve checks are
 * done; then follows the plan of repair. `mends` says with which chance a remedy mends the hidden fault.
 */
export function workOn(knower: Knower, truth: HiddenFault, mends: (remedy: string) => number): Finished {
  const evidence: Evidence[] = knower.device.functions.map(({ id }) =>
    truth.answer({ id: `try ${id}`, minutes: 0, stage: 'closed', kind: 'try', function: id, with: [] }, undefined),
  );
  const trials = evidence.length;
  let [stakes, bench, minutes] = [STAKES, AT_FIRST, 0];
  for (;;) {
    const belief = knower.believe(evidence);
    const [block] = blocksBy(belief, knower.device);
    const isOver = block!.chance >= SURE || evidence.length - trials >= MOST_CHECKS;
    const next = isOver ? undefined : mostTelling(knower.rank(evidence, stakes, bench));
    if (!next) {
      const left = followPlan(knower.device, belief, stakes, mends);
      const costMinor = STAKES.workingMinor - left + (minutes / 60) * STAKES.hourMinor;
      return { truth, belief, checks: evidence.length - trials, minutes, costMinor };
    }
    const point = next.check.kind === 'measure' ? knower.point(next.check.point) : undefined;
    evidence.push(truth.answer(next.check, point));
    minutes += next.minutes;
    stakes = openedTo(stakes, next.check.stage);
    if (point) bench = afterReading(bench, point);
  }
}

const afterReading = (bench: BenchState, { side, power, mode }: NonNullable<ReturnType<Knower['point']>>): BenchState => ({
  side: side === 'both' ? bench.side : side,
  power,
  mode,
});

function mostTelling(ranked: readonly RankedCheck[]): RankedCheck | undefined {
  const telling = ranked.filter(({ bits, repeat }) => bits >= LEAST_BITS && !repeat);
  const rate = ({ bits, minutes }: RankedCheck): number => bits / Math.max(minutes, 0.5);
  return telling.length === 0 ? undefined : telling.reduce((a, b) => (rate(b) > rate(a) ? b : a));
}

/** Blocks by the chance that a fault of theirs is there, likeliest first. */
export function blocksBy({ marginal }: Belief, { faults }: DeviceModel): { readonly block: string; readonly chance: number }[] {
  const chances = new Map<string, number>();
  for (const { id, block } of faults) chances.set(block, (chances.get(block) ?? 0) + (marginal.get(id) ?? 0));
  return [...chances].map(([block, chance]) => ({ block, chance })).sort((a, b) => b.chance - a.chance);
}

/** What the planned row of remedies is expected to bring when this is the hidden fault. */
function followPlan(device: DeviceModel, belief: Belief, stakes: Stakes, mends: (remedy: string) => number): number {
  let [broken, worth] = [1, 0];
  for (const { remedy, costMinor } of repairPlan(device, belief, stakes).steps) {
    const chance = mends(remedy.id);
    worth += broken * (chance * STAKES.workingMinor - costMinor);
    broken *= 1 - chance;
  }
  return worth + broken * STAKES.asIsMinor;
}
