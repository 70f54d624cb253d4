import type { Side, Step } from './step.ts';

/** What the way costs beside the minutes of its steps, all in minutes. Common practice, no source; the person sets them. */
export interface Weights {
  /** To find the place, look at the drawing and put something aside: makes fewer steps better than more. */
  readonly perStep: number;
  readonly toolChange: number;
  readonly turning: number;
  /** What ruining the device would cost, in minutes of work: makes safer steps better. */
  readonly harm: number;
}

export const USUAL_WEIGHTS: Weights = { perStep: 0.2, toolChange: 0.3, turning: 0.2, harm: 240 };

/** How the bench stands: what is in the hand, and which side is up (null: as it comes, either will do). */
export interface Stance {
  readonly tool: string | null;
  readonly side: Side | null;
}

export const EMPTY_HANDS: Stance = { tool: null, side: null };

/** Whether the tool has to be changed, or first taken up, for a step. */
export const changesTool = (stance: Stance, step: Step): boolean => step.tool !== null && step.tool !== stance.tool;

/** Whether the device has to be turned over for a step. */
export const turns = (stance: Stance, step: Step): boolean => step.side !== null && stance.side !== null && step.side !== stance.side;

/** How the bench stands after a step. */
export const after = (stance: Stance, step: Step): Stance => ({ tool: step.tool ?? stance.tool, side: step.side ?? stance.side });

/** What a step costs by itself, minutes. */
export const workOf = (step: Step, weights: Weights): number => step.minutes + weights.perStep + step.risk * weights.harm;

/** What it costs to get ready for a step, minutes. */
export const changeover = (stance: Stance, step: Step, weights: Weights): number =>
  (changesTool(stance, step) ? weights.toolChange : 0) + (turns(stance, step) ? weights.turning : 0);

export interface Effort {
  /** Minutes of the steps alone. */
  readonly minutes: number;
  readonly toolChanges: number;
  readonly turnings: number;
  /** Chance that at least one step damages something. */
  readonly risk: number;
  /** What is made as small as possible: minutes, and all of the above weighed in minutes. */
  readonly cost: number;
}

/** What an order of steps takes from a stance on. */
export function effortOf(order: readonly Step[], weights: Weights, start: Stance = EMPTY_HANDS): Effort {
  let stance = start;
  let [minutes, toolChanges, turnings, safe, cost] = [0, 0, 0, 1, 0];
  for (const step of order) {
    minutes += step.minutes;
    toolChanges += changesTool(stance, step) ? 1 : 0;
    turnings += turns(stance, step) ? 1 : 0;
    safe *= 1 - step.risk;
    cost += workOf(step, weights) + changeover(stance, step, weights);
    stance = after(stance, step);
  }
  return { minutes, toolChanges, turnings, risk: 1 - safe, cost };
}

/** Less than or equal to what all of these steps cost in any order: each tool taken up once, one turning where both sides are asked for. */
export function leastForAll(steps: readonly Step[], start: Stance, weights: Weights): number {
  const work = steps.reduce((sum, step) => sum + workOf(step, weights), 0);
  const tools = new Set(steps.flatMap(({ tool }) => (tool === null || tool === start.tool ? [] : [tool])));
  const sides = new Set([start.side, ...steps.map(({ side }) => side)].filter((side) => side !== null));
  return work + tools.size * weights.toolChange + (sides.size > 1 ? weights.turning : 0);
}
