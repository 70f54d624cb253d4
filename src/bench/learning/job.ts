import type { BenchState } from '../state.ts';

/** A piece of work or evidence that a learned number rests on. */
export interface Job {
  readonly eventId: string;
  readonly itemId: string;
  readonly at: string;
  readonly text: string;
  /** 1 when fresh, less with age; 0 never. */
  readonly weight: number;
}

const DAY_MS = 86_400_000;

/** Weight of something of that time: half after each half-life, as of the newest event; 0 before the number was reset. */
export function weightOf({ learning, newestAt }: Readonly<BenchState>, about: string, at: string): number {
  if (at <= (learning.resets.get(about) ?? '')) return 0;
  if (learning.halfLifeDays === null) return 1;
  const days = (Date.parse(newestAt) - Date.parse(at)) / DAY_MS;
  return 2 ** (-Math.max(0, days) / learning.halfLifeDays);
}
