import { TeardownError } from './teardown-error.ts';

/** The side of the device that must be up, so that its other side lies on the mat. */
export type Side = 'front' | 'back';

/** A step that must be done before, or one of several of which any will do. */
export type Need = string | { readonly any: readonly string[] };

/** One step of opening. All of `needs` must be met before it; an empty list of `any` is never met. */
export interface Step {
  readonly id: string;
  readonly needs: readonly Need[];
  /** What is held in the hand for it; null when the fingers do, whatever else they hold. */
  readonly tool: string | null;
  /** Null when it can be done whichever way the device lies. */
  readonly side: Side | null;
  readonly minutes: number;
  /** Chance that it damages something, 0 to 1. */
  readonly risk: number;
}

/** The steps by id. Throws `TeardownError` on an id given twice, a need that no step has, or a number out of its range. */
export function stepsById(steps: readonly Step[]): ReadonlyMap<string, Step> {
  const byId = new Map<string, Step>();
  for (const step of steps) {
    if (byId.has(step.id)) throw new TeardownError('duplicate-step', `the step "${step.id}" is given twice`);
    if (!(step.minutes >= 0) || !(step.risk >= 0 && step.risk <= 1))
      throw new TeardownError('bad-number', `the step "${step.id}" needs minutes from 0 and a risk from 0 to 1`);
    byId.set(step.id, step);
  }
  for (const step of steps)
    for (const need of step.needs.flatMap(namesIn))
      if (!byId.has(need)) throw new TeardownError('unknown-step', `"${step.id}" needs "${need}", which is no step`);
  return byId;
}

/** The steps that a need names. */
export const namesIn = (need: Need): readonly string[] => (typeof need === 'string' ? [need] : need.any);

/** Whether a need is met once `done` are done. */
export const isMet = (need: Need, done: ReadonlySet<string>): boolean =>
  typeof need === 'string' ? done.has(need) : need.any.some((id) => done.has(id));
