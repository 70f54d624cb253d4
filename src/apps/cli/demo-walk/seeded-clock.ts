import { v7 } from 'uuid';
import { randomStream } from '../../../core/numeric/index.ts';
import type { Clock } from '../../../bench/ports.ts';

/** A clock that stands until it is moved on, and ids that follow from its time, a count and a seed: the same story has the same ids. */
export interface SeededClock extends Clock {
  /** Moves the time on; minutes may be a fraction. */
  pass(minutes: number): void;
  /** Sets the time; it may also go back. */
  goTo(at: Date): void;
}

const MINUTE_MS = 60_000;

/** A clock that starts at a time. Its ids are UUID version 7 (RFC 9562) with the count in their sequence bits. */
export function seededClock(start: Date, seed: string): SeededClock {
  const random = randomStream(seed);
  let nowMs = start.getTime();
  let count = 0;
  return {
    now: () => new Date(nowMs),
    newId: () => v7({ msecs: nowMs, seq: count++, random: Uint8Array.from({ length: 16 }, () => Math.floor(random() * 256)) }),
    pass: (minutes) => {
      nowMs += Math.round(minutes * MINUTE_MS);
    },
    goTo: (at) => {
      nowMs = at.getTime();
    },
  };
}
