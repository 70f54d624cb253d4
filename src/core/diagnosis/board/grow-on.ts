import type { DeviceModel } from '../model.ts';
import { growPairsFrom, plainColumn, readingColumn, screenedAt, type Column } from '../readings/grow-pairs.ts';
import { stateSpace, type FaultPair } from '../state-space.ts';
import { weigh } from '../weighed.ts';
import type { BoardSense } from './board-sense.ts';
import type { BoardObservation } from './observed.ts';

const NONE_ABSENT: ReadonlySet<string> = new Set();

/** Pairs of faults that explain the evidence of some one time together, the latest time first. `singles` are chances by row after each time's evidence. */
export function growOn(
  model: DeviceModel,
  sense: BoardSense,
  seen: readonly (readonly BoardObservation[])[],
  singles: readonly Float64Array[],
  limit: number,
): FaultPair[] {
  const odds = Float64Array.from([1, ...model.faults.map(({ rate }) => rate / Math.max(1 - rate, 1e-9))]);
  const found = new Map<number, FaultPair>();
  for (let t = seen.length - 1; t >= 0; t--) {
    const pairs = growPairsFrom(columnsOf(model, sense, seen[t]!), singles[t]!, limit - found.size, odds);
    for (const [a, b] of pairs) found.set(a * odds.length + b, [a - 1, b - 1]);
    if (found.size >= limit) break;
  }
  return [...found.values()];
}

function columnsOf(model: DeviceModel, sense: BoardSense, seen: readonly BoardObservation[]): Column[] {
  const { kernels } = sense.baseline;
  const at = screenedAt(kernels.dictionary.draws);
  const space = stateSpace(model, []);
  return seen.map((each) =>
    each.kind === 'board'
      ? readingColumn(kernels, each.reading.likelihood, each.reading.far, at)
      : plainColumn(weigh(model, space, each.piece, NONE_ABSENT).likelihood.subarray(0, space.unknown), at),
  );
}
