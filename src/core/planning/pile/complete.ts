import { gainOf, type Problem } from './problem.ts';

/** The branching stops after so many tries and keeps the best so far. */
const MOST_TRIES = 3000;

/**
 * How many units of each model to finish when it is known what works: the second stage by counts. `most` is the least count over the
 * slots, `pairs` how many units are whole in their original slots. Gains of one model never rise, so that without a lack of minutes
 * every gain above nothing is taken; else the best counts are branched for, denser models first. Fills `built`; the gain comes out.
 */
export function complete(problem: Problem, most: Int32Array, pairs: Int32Array, minutes: number, built: Int32Array): number {
  const { models, minuteMinor } = problem;
  let [needed, total] = [0, 0];
  const gains: number[][] = [];
  for (let m = 0; m < models.length; m++) {
    const model = models[m]!;
    const list: number[] = [];
    for (let j = 1; j <= most[m]!; j++) {
      const gain = gainOf(model, minuteMinor, j) + (j <= pairs[m]! ? model.moreMinor : 0);
      if (gain <= 0) break;
      list.push(gain);
      total += gain;
    }
    gains.push(list);
    built[m] = list.length;
    needed += list.length * model.buildMinutes;
  }
  return needed <= minutes + 1e-9 ? total : branch(problem, gains, minutes, built);
}

function branch(problem: Problem, gains: readonly number[][], minutes: number, built: Int32Array): number {
  const { models } = problem;
  const density = (m: number): number => (gains[m]![0] ?? 0) / models[m]!.buildMinutes;
  const order = models.map((_, m) => m).sort((a, b) => density(b) - density(a));
  const now = new Int32Array(models.length);
  built.fill(0);
  let [best, tries] = [0, 0];
  const visit = (at: number, left: number, sum: number): void => {
    if (sum > best) {
      best = sum;
      built.set(now);
    }
    if (at === order.length || tries++ > MOST_TRIES || sum + Math.max(0, left) * density(order[at]!) <= best) return;
    const m = order[at]!;
    const list = gains[m]!;
    const fits = Math.min(list.length, Math.floor((left + 1e-9) / models[m]!.buildMinutes));
    let gain = 0;
    for (let j = 0; j < fits; j++) gain += list[j]!;
    for (let count = fits; count >= 0; count--) {
      now[m] = count;
      visit(at + 1, left - count * models[m]!.buildMinutes, sum + gain);
      if (count > 0) gain -= list[count - 1]!;
    }
    now[m] = 0;
  };
  visit(0, minutes, 0);
  return best;
}
