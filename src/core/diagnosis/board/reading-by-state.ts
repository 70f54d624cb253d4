import type { DeviceModel } from '../model.ts';
import { pairsSimulated } from '../readings/pair-kernels.ts';
import type { FaultPair, StateSpace } from '../state-space.ts';
import { weigh, type Weighed } from '../weighed.ts';
import type { BoardReading } from './board-reading.ts';
import { heldByCircuit, type BoardSense } from './board-sense.ts';
import { spreadOverDraws } from './by-draw.ts';
import type { BoardObservation } from './observed.ts';

/**
 * Observations of one time as weights by state and draw. Of two faults a reading is taken as simulated with both, for the pairs that were `grown`; else as
 * on a board that has the one already, where that is computed; else as of whichever moves the point further.
 */
export function readingByState(
  model: DeviceModel,
  sense: BoardSense,
  space: StateSpace,
  seen: readonly BoardObservation[],
  grown: readonly FaultPair[],
  absent: ReadonlySet<string>,
): Weighed[] {
  const { draws } = sense.baseline.kernels.dictionary;
  const readings = seen.flatMap((each) => (each.kind === 'board' ? [each.reading] : []));
  const simulated = simulatedPairs(sense, grown, readings);
  return seen.map((each) => {
    if (each.kind === 'plain') return overDraws(weigh(model, space, each.piece, absent), draws);
    const { reading, key } = each;
    return byState(space, key, reading, draws, simulated.get(reading));
  });
}

function overDraws({ trial, ...weighed }: Weighed, draws: number): Weighed {
  const spread = (values: Float64Array): Float64Array => spreadOverDraws(values, draws);
  const flat = { ...weighed, likelihood: spread(weighed.likelihood), chance: spread(weighed.chance) };
  if (!trial) return flat;
  const { works, fails, 'comes-and-goes': sometimes } = trial.behaviours;
  const behaviours = { works: spread(works), fails: spread(fails), 'comes-and-goes': spread(sometimes) };
  return { ...flat, trial: { ...trial, behaviours } };
}

/** Likelihoods by pair key and draw, of each reading. */
type Simulated = ReadonlyMap<number, Float64Array>;

function simulatedPairs(sense: BoardSense, grown: readonly FaultPair[], readings: readonly BoardReading[]): Map<BoardReading, Simulated> {
  const held = heldByCircuit(sense);
  const { draws } = sense.baseline.kernels.dictionary;
  const pairs = grown.filter(([a, b]) => a < held && b < held);
  const found = pairsSimulated(
    sense.baseline,
    pairs.map(([a, b]) => [a + 1, b + 1] as const),
    readings.map(({ likelihood }) => likelihood),
  );
  const at = (k: number, r: number): number => (k * readings.length + r) * draws;
  return new Map(
    readings.map((reading, r) => [reading, new Map(pairs.map(([a, b], k) => [pairKey(a, b), found.subarray(at(k, r), at(k, r) + draws)]))]),
  );
}

const pairKey = (a: number, b: number): number => a * 65_536 + b;

function byState(space: StateSpace, key: string, reading: BoardReading, draws: number, simulated: Simulated | undefined): Weighed {
  const { likelihood, far, fits, withFault } = reading;
  const own = new Float64Array(space.size * draws);
  const chance = new Float64Array(space.size * draws);
  for (let s = 0; s < space.size; s++) {
    const [a, b] = [space.first[s]!, space.second[s]!];
    const row = b < 0 ? 1 + a : far[1 + a]! >= far[1 + b]! ? 1 + a : 1 + b;
    const from = row * draws;
    own.set(likelihood.rows.subarray(from, from + draws), s * draws);
    chance.set(fits.subarray(from, from + draws), s * draws);
    if (b < 0) continue;
    const exact = simulated?.get(pairKey(a, b)) ?? onBoardWith(withFault, a, b, draws);
    if (!exact) continue;
    for (let d = 0; d < draws; d++) if (!Number.isNaN(exact[d]!)) own[s * draws + d] = exact[d]!;
  }
  own.set(likelihood.unknown, space.unknown * draws);
  return { id: reading.id, key, likelihood: own, chance };
}

/** The row of the other fault on boards that have one of the two. */
function onBoardWith(withFault: BoardReading['withFault'], a: number, b: number, draws: number): Float64Array | undefined {
  const row = (on: number, other: number): Float64Array | undefined => {
    const rows = withFault.get(on)?.rows;
    const from = (1 + other) * draws;
    return rows && from < rows.length ? rows.subarray(from, from + draws) : undefined;
  };
  return row(a, b) ?? row(b, a);
}
