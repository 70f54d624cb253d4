import {
  learnedMinutes,
  planSteps,
  progressOf,
  reassemblyOf,
  type Effort,
  type Progress,
  type Reversible,
  type Stance,
  type Tick,
  type Weights,
} from '../../core/teardown/index.ts';
import type { Model } from '../models/index.ts';
import { needsOf, type Goal, type GoalNeeds } from './goals.ts';
import { teardownSteps, type StepSpec } from './teardown-steps.ts';

export interface WayOptions {
  readonly weights?: Weights;
  readonly start?: Stance;
  /** Steps done already, oldest first, with the minutes that each took. */
  readonly ticks?: readonly Tick[];
  /** Minutes that each step took before, by step, on any unit of the model. */
  readonly times?: ReadonlyMap<string, readonly number[]>;
  readonly shouldStop?: () => boolean;
}

export interface WayStep {
  readonly spec: StepSpec;
  /** As the person is expected to take. */
  readonly minutes: number;
  readonly fasteners: { readonly name: string; readonly drive: string; readonly lengthMm: number; readonly count: number } | null;
  /** True where the tool before has to be put down for this one. */
  readonly changesTool: boolean;
  readonly turns: boolean;
}

export type WayIn =
  | {
      readonly ok: true;
      readonly steps: readonly WayStep[];
      /** How to close again all that is then open: what was ticked before as well. */
      readonly back: readonly WayStep[];
      readonly effort: Effort;
      /** Proved to be the best; otherwise no way costs less than `bound` of `effort.cost`. */
      readonly exact: boolean;
      readonly bound: number;
      readonly progress: Progress;
    }
  | { readonly ok: false; readonly code: Extract<GoalNeeds, { ok: false }>['code'] | 'goal-out-of-reach' };

/** The way to a goal from where the person stands, with what each step asks for, and the way back. */
export function wayIn(model: Model, goal: Goal, options: WayOptions = {}): WayIn {
  const needs = needsOf(model, goal);
  if (!needs.ok) return needs;
  const { ticks = [], times = new Map<string, readonly number[]>(), start } = options;
  const steps = teardownSteps(model.file, (spec) => learnedMinutes(spec.minutes, times.get(spec.id) ?? []));
  const byId = new Map(steps.map((step) => [step.id, step]));
  const behind = [...new Set(ticks.map(({ step }) => step))].flatMap((id) => byId.get(id) ?? []);
  const plan = planSteps(steps, needs.needs, { ...options, done: new Set(behind.map(({ id }) => id)) });
  if (!plan.ok) return { ok: false, code: plan.code };
  const ahead = plan.order.map(({ id }) => byId.get(id)!);
  const whole = [...behind, ...ahead];
  return {
    ok: true,
    steps: dressed(model, ahead, start),
    back: dressed(model, reassemblyOf(whole)),
    effort: plan.effort,
    exact: plan.exact,
    bound: plan.bound,
    progress: progressOf(whole, ticks),
  };
}

function dressed({ file }: Model, order: readonly Reversible[], start: Stance = { tool: null, side: null }): WayStep[] {
  let { tool, side } = start;
  return order.map((step) => {
    const spec = file.steps.find(({ id }) => id === step.id)!;
    const set = file.fasteners.find(({ id }) => id === spec.fasteners);
    const dress: WayStep = {
      spec,
      minutes: step.minutes,
      fasteners: set ? { name: set.name, drive: set.drive, lengthMm: set.length_mm, count: set.count } : null,
      changesTool: step.tool !== null && step.tool !== tool,
      turns: step.side !== null && side !== null && step.side !== side,
    };
    [tool, side] = [step.tool ?? tool, step.side ?? side];
    return dress;
  });
}
