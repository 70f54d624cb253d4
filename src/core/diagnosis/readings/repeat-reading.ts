import { minutesCost } from '../getting-there.ts';
import { believeReadings, type BelieveOptions } from './believe-readings.ts';
import type { Stretch } from './evidence.ts';
import { pointIndex } from './likelihood.ts';
import { Desk, type ReadingChoice } from './next-readings.ts';
import { OutcomeShares } from './outcome-shares.ts';
import type { ReadingPoint } from './reading-dictionary.ts';

/** A reading that disagrees with the rest, as a check to do once more: the new one goes in place of the old one. */
export interface RepeatedReading {
  readonly evidenceId: string;
  readonly point: ReadingPoint;
  /** Chance that it says nothing about the unit. */
  readonly slip: number;
  readonly minutes: number;
  readonly savingMinor: number;
  readonly savingPerMinuteMinor: number;
  readonly bits: number;
  /** Whether it saves more than its minutes cost. */
  readonly pays: boolean;
}

/** A reading less likely to be a slip than this is not doubted. */
const LEAST_DOUBT = 0.1;

/**
 * What it is worth to take the reading of the last stretch that disagrees most once more; undefined where none is in doubt. If the old reading holds, it comes
 * again and changes nothing; if it was a slip, the new one tells what a first reading of the point tells to the belief without it. So bits and saving are
 * those of the belief without it, times the chance of a slip.
 */
export function repeatReading(stretches: readonly Stretch[], options: BelieveOptions, choice: ReadingChoice): RepeatedReading | undefined {
  const last = stretches.at(-1)!;
  const readings = new Map(last.evidence.flatMap((each) => (each.kind === 'reading' ? [[each.id, each]] : [])));
  const doubted = choice.belief.odd.find(({ evidenceId, slip }) => readings.has(evidenceId) && slip >= LEAST_DOUBT);
  if (!doubted) return undefined;
  const { evidenceId, slip } = doubted;
  const { point } = readings.get(evidenceId)!;
  const p = pointIndex(choice.baseline.kernels, point);
  const evidence = last.evidence.filter((each) => each.kind !== 'reading' || each.point !== point);
  const without = believeReadings([...stretches.slice(0, -1), { ...last, evidence }], options);
  const shares = new OutcomeShares(without.weights, choice.baseline.kernels, choice.bands);
  const desk = new Desk(choice);
  const { minutes } = desk.inform(p);
  const savingMinor = slip * desk.saving(p, shares);
  return {
    evidenceId,
    point: choice.baseline.kernels.dictionary.points[p]!,
    slip,
    minutes,
    savingMinor,
    savingPerMinuteMinor: savingMinor / minutes,
    bits: slip * shares.bits(p),
    pays: savingMinor > minutesCost(choice.stakes, minutes),
  };
}
