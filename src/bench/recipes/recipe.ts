import type { Caution } from '../models/index.ts';

/** What the heat of an action is set by; the numbers come from the alloy. */
export type Heat = 'tip-fine' | 'tip-heavy' | 'air';

export interface Action {
  readonly text: string;
  readonly cautions: readonly Caution[];
  readonly heat?: Heat;
  /** Minutes in which the hands are free: drying, soaking, cooling. */
  readonly waitMinutes?: number;
}

/** How a kind of work is done. All of it is common practice, no source, unless `source` names one. */
export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly materials: readonly string[];
  readonly actions: readonly Action[];
  /** What to look at or measure after it, before the unit is closed. */
  readonly inspect: readonly string[];
  /** When to stop and think again. */
  readonly stopWhen: readonly string[];
  readonly source: string;
}

export const COMMON_PRACTICE = 'Common practice, no source. Local rules and licensed practice come first.';

/** One action with its dangers. */
export const act = (text: string, cautions: readonly Caution[] = [], more: Omit<Action, 'text' | 'cautions'> = {}): Action => ({
  text,
  cautions,
  ...more,
});
