import type { Remedy, Stakes } from '../../model.ts';
import type { Baseline } from '../evidence.ts';
import { kernelsOf } from '../kernels.ts';
import type { ReadingFault, ReadingPoint } from '../reading-dictionary.ts';

/** A supply of 5 V into a divider of R1 over R2, with R3 after it to a lamp; every draw scales the supply and R2. By hand, so that a test can follow it. */
export interface Ladder {
  readonly supply: number;
  readonly r1: number;
  readonly r2: number;
}

export const LADDER_FAULTS: readonly ReadingFault[] = [
  { id: 'r1-open', block: 'divider', part: 'r1', rate: 0.02 },
  { id: 'r2-open', block: 'divider', part: 'r2', rate: 0.02 },
  { id: 'r2-short', block: 'divider', part: 'r2', rate: 0.01 },
  { id: 'supply-dead', block: 'supply', part: 'u1', rate: 0.03 },
  { id: 'r3-open', block: 'lamp', part: 'r3', rate: 0.01 },
];

const point = (id: string, mode: ReadingPoint['mode'], power: string): ReadingPoint => ({
  id,
  mode,
  minutes: 1,
  side: 'front',
  stage: 'open',
  power,
});
export const LADDER_POINTS = [
  point('in', 'volts', 'on'),
  point('mid', 'volts', 'on'),
  point('r1', 'ohms', 'off'),
  point('r2', 'ohms', 'off'),
];

/** What the four points read with these faults: V, V, Ω, Ω. */
export function ladderReads({ supply, r1, r2 }: Ladder, faults: readonly string[]): number[] {
  const has = (fault: string): boolean => faults.includes(fault);
  const volts = has('supply-dead') ? 0 : supply;
  const upper = has('r1-open') ? Infinity : r1;
  const lower = has('r2-short') ? 0.5 : has('r2-open') ? Infinity : r2;
  const mid = upper === Infinity ? 0 : lower === Infinity ? volts : (volts * lower) / (upper + lower);
  return [volts, mid, upper, lower];
}

export const LADDERS: readonly Ladder[] = [-1.2, -0.7, -0.3, 0, 0.2, 0.5, 0.9, 1.3].map((x, i) => ({
  supply: 5 * (1 + 0.01 * x),
  r1: 1000,
  r2: 1000 * (1 + 0.04 * [0.4, -1.1, 0.9, -0.2, 1.2, -0.6, 0.1, -0.8][i]!),
}));

const limit = (_: ReadingPoint['mode'], value: number): number => 0.005 * Math.abs(value) + 0.002;

/** `known` faults are simulated, the others are not yet. The lamp works when the divider does and R3 is there. */
export function ladder(known: readonly string[] = LADDER_FAULTS.map(({ id }) => id)): Baseline {
  const rows = [[], ...LADDER_FAULTS.map(({ id }) => [id])];
  const values = rows.flatMap((faults) =>
    LADDERS.flatMap((board) => (faults.every((id) => known.includes(id)) ? ladderReads(board, faults) : LADDER_POINTS.map(() => NaN))),
  );
  const works = rows.flatMap((faults) => LADDERS.map(() => Number(faults.length === 0)));
  return {
    kernels: kernelsOf({ faults: LADDER_FAULTS, points: LADDER_POINTS, draws: LADDERS.length, values: Float64Array.from(values) }, limit),
    functions: new Map([['lamp', Float32Array.from(works)]]),
    simulate: (pairs, points) =>
      Float64Array.from(
        pairs.flatMap((pair) =>
          LADDERS.flatMap((board) => {
            const all = ladderReads(
              board,
              pair.map((fault) => LADDER_FAULTS[fault]!.id),
            );
            return points.map((p) => all[p]!);
          }),
        ),
      ),
  };
}

const remedy = (id: string, minutes: number, mends: Record<string, number>): Remedy => ({
  id,
  minutes,
  mends,
  partsCostMinor: 20,
  risk: 0.01,
  stage: 'open',
});

export const LADDER_REMEDIES: readonly Remedy[] = [
  remedy('new-r1', 6, { 'r1-open': 0.95 }),
  remedy('new-r2', 6, { 'r2-open': 0.95, 'r2-short': 0.95 }),
  remedy('new-supply', 40, { 'supply-dead': 0.9 }),
  remedy('new-r3', 6, { 'r3-open': 0.95 }),
];

export const LADDER_STAKES: Stakes = {
  workingMinor: 6000,
  asIsMinor: 800,
  hourMinor: 1800,
  openingMinutes: { open: 4, 'board-out': 4 },
  stage: 'open',
};
