import { goalText } from './goal-text.ts';
import { goalsOf, type Goal } from './goals.ts';
import type { Model } from '../models/index.ts';

export type GoalGroup = 'how-far' | 'get-at' | 'work' | 'part';

export interface GoalChoice {
  readonly goal: string;
  readonly name: string;
  readonly group: GoalGroup;
}

/** Every goal that a person can pick for a model: how far, what to get at, the work it is for, and parts of the board. None where it has no steps. */
export function goalList(model: Model): GoalChoice[] {
  const { file, circuit } = model;
  if (file.steps.length === 0) return [];
  const choice = (goal: Goal, name: string, group: GoalGroup): GoalChoice => ({ goal: goalText(goal), name, group });
  const closed: Goal = { kind: 'stage', stage: 'closed' };
  return [
    ...goalsOf(file).map(({ goal, name }) => choice(goal, name, goal.kind === 'stage' ? 'how-far' : 'get-at')),
    choice(closed, 'Close it again', 'how-far'),
    ...file.remedies.filter(({ stage }) => stage !== 'closed').map(({ id, name }) => choice({ kind: 'remedy', remedy: id }, name, 'work')),
    ...(circuit?.parts ?? []).map(({ ref, value }) =>
      choice({ kind: 'part', part: ref }, value === '' ? ref : `${ref} (${value})`, 'part'),
    ),
  ];
}
