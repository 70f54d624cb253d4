import { median } from '../../numeric/index.ts';

/** What was odd about the clock of a log, at a row counted from the first row of numbers. */
export interface ClockNote {
  readonly kind: 'midnight' | 'reset' | 'set-back' | 'set-forward' | 'gap';
  readonly row: number;
  /** What the clock did there, s. */
  readonly stepS: number;
}

export interface MendedClock {
  /** Seconds since the first row, never falling. */
  readonly seconds: readonly number[];
  readonly notes: readonly ClockNote[];
  readonly usualStepS: number;
}

/** A step of so many usual steps is out of the ordinary. */
const LONG = 12;
/** A clock that falls back to within so many usual steps of its first time began anew. */
const NEAR_START = 5;
const DAY = 86_400;

/**
 * The times of a log put right: past midnight a day is added; where the clock began anew, was set back or set forward, it
 * goes on with the usual step. `steady(row)` tells whether the measured values went on across a long step as if nothing had
 * happened: then the clock was set forward, otherwise rows are missing (a gap), whose time is kept.
 */
export function mendClock(times: readonly number[], ofDay: boolean, steady: (row: number) => boolean): MendedClock {
  const steps = times.slice(1).map((time, i) => time - times[i]!);
  const usual = median(steps.filter((step) => step > 0));
  const notes: ClockNote[] = [];
  const seconds = [0];
  for (let row = 1; row < times.length; row++) {
    const step = steps[row - 1]!;
    const kind = oddStep(step, row, { times, usual, ofDay, steady });
    if (kind) notes.push({ kind, row, stepS: step });
    const counted = kind === undefined || kind === 'gap' ? step : kind === 'midnight' ? step + DAY : usual;
    seconds.push(seconds.at(-1)! + counted);
  }
  return { seconds, notes, usualStepS: usual };
}

function oddStep(
  step: number,
  row: number,
  clock: { times: readonly number[]; usual: number; ofDay: boolean; steady: (row: number) => boolean },
): ClockNote['kind'] | undefined {
  const { times, usual, ofDay, steady } = clock;
  if (step >= 0 && step <= LONG * usual) return undefined;
  if (step > 0) return steady(row) ? 'set-forward' : 'gap';
  if (ofDay && step + DAY >= 0 && step + DAY <= LONG * usual) return 'midnight';
  return Math.abs(times[row]! - Math.min(0, times[0]!)) <= NEAR_START * usual || times[row]! <= times[0]! ? 'reset' : 'set-back';
}
