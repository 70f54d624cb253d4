import { dayNumber } from '../market/day-number.ts';
import type { BenchState } from '../state.ts';

/** A piece of work or evidence that a learned number rests on. */
export interface Job {
  readonly eventId: string;
  /** Null of what is not of the bench's own, such as a sale of somebody else. */
  readonly itemId: string | null;
  readonly at: string;
  readonly text: string;
  /** 1 when fresh, less with age; 0 never. */
  readonly weight: number;
}

/** Weight of something of that time: half after each half-life, counted in whole days up to the newest event; 0 before the number was reset. */
export function weightOf({ learning, newestAt }: Readonly<BenchState>, about: string, at: string): number {
  return at <= (learning.resets.get(about) ?? '') ? 0 : fadedSince({ learning, newestAt }, at);
}

/** The same whatever it is about, as if nothing had been reset. */
export function fadedSince({ learning, newestAt }: Pick<BenchState, 'learning' | 'newestAt'>, at: string): number {
  if (learning.halfLifeDays === null) return 1;
  return 2 ** (-Math.max(0, dayNumber(newestAt) - dayNumber(at)) / learning.halfLifeDays);
}

/** Mean, standard deviation around it, and sum of the weights; NaN of no value. */
export function meanAndSpread(values: readonly { readonly value: number; readonly weight: number }[]): {
  readonly mean: number;
  readonly spread: number;
  readonly weight: number;
} {
  const weight = values.reduce((sum, each) => sum + each.weight, 0);
  const mean = values.reduce((sum, each) => sum + each.weight * each.value, 0) / weight;
  const spread = Math.sqrt(values.reduce((sum, each) => sum + each.weight * (each.value - mean) ** 2, 0) / weight);
  return { mean, spread, weight };
}
