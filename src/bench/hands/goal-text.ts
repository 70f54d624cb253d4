import type { Stage } from '../events/index.ts';
import type { Goal } from './goals.ts';

const IS_STAGE: Readonly<Record<Stage, true>> = { closed: true, open: true, 'board-out': true };

/** A goal as one word, for addresses and commands: "slot:display", "part:U7", "stage:closed". */
export const goalText = (goal: Goal): string => `${goal.kind}:${nameOf(goal)}`;

/** The goal of such a word; null where it is none. Whether the model has it is for `needsOf` to say. */
export function goalOf(text: string): Goal | null {
  const [, kind, name] = /^(stage|block|slot|remedy|check|part):(.+)$/.exec(text) ?? [];
  if (kind === undefined || name === undefined) return null;
  if (kind !== 'stage') return { kind, [kind]: name } as Goal;
  return name in IS_STAGE ? { kind, stage: name as Stage } : null;
}

const nameOf = (goal: Goal): string => (goal as unknown as Record<string, string>)[goal.kind]!;
