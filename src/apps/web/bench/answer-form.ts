import type { Stage } from '../../../bench/events/index.ts';

/** What the three forms of an outcome share. */
export interface AnswerFormProps {
  /** The function, block or point that it is about. */
  readonly target: string;
  readonly usualMinutes: number;
  readonly stageNeeded: Stage;
}

/** The name of a declared thing; its id when the model does not declare it. */
export const nameIn = (list: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  list.find((each) => each.id === id)?.name ?? id;
