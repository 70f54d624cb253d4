import type { SimulatePairs } from '../../core/diagnosis/readings/index.ts';
import { DRAWS, togetherOn, type BoardTask } from './board-work.ts';
import { lookAt } from './look.ts';
import { readyBoards, simulateLooks, type ReadyBoards } from './simulate-looks.ts';

/** Pairs that are remembered at one point; beyond that the oldest are forgotten. */
const MOST = 4000;

/** Readings of pairs of faults on the drawn boards of a task, each simulated once. */
export function simulatedPairs({ model, faults, points, already }: BoardTask): SimulatePairs {
  let ready: ReadyBoards | undefined;
  const known = new Map<string, Float64Array>();
  const simulate = (pairs: readonly (readonly [number, number])[], point: number): void => {
    ready ??= readyBoards(model, DRAWS);
    const sets = pairs.map(([a, b]) => togetherOn([...already, faults[a]!.circuit, faults[b]!.circuit]));
    const values = simulateLooks(ready, sets, [lookAt(points[point]!, model.circuit!)]);
    pairs.forEach(([a, b], i) => known.set(`${a} ${b} ${point}`, values.slice(i * DRAWS, (i + 1) * DRAWS)));
    for (const key of known.keys()) {
      if (known.size <= MOST) break;
      known.delete(key);
    }
  };
  return (pairs, at) => {
    for (const point of at) {
      const missing = pairs.filter(([a, b]) => !known.has(`${a} ${b} ${point}`));
      if (missing.length > 0) simulate(missing, point);
    }
    const result = new Float64Array(pairs.length * DRAWS * at.length);
    pairs.forEach(([a, b], k) =>
      at.forEach((point, i) =>
        (known.get(`${a} ${b} ${point}`) ?? new Float64Array(DRAWS).fill(NaN)).forEach(
          (value, d) => (result[(k * DRAWS + d) * at.length + i] = value),
        ),
      ),
    );
    return result;
  };
}
