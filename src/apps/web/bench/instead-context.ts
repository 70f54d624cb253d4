import { createContext, useContext } from 'react';
import type { AdviceView } from '../../../bench/views/index.ts';
import { useUnit } from './unit-context.ts';

/** What the person does instead of the advice, by its id; null while they follow it. The card takes its outcome, and the board shows where it is. */
export interface Instead {
  readonly id: string | null;
  readonly choose: (id: string | null) => void;
}

export const InsteadContext = createContext<Instead>({ id: null, choose: () => undefined });

export interface AtHand {
  readonly check: AdviceView['check'];
  readonly remedy: AdviceView['remedy'];
  readonly isOwnChoice: boolean;
}

/** The check or remedy that the card is about: that of the advice, or the one chosen instead. */
export function useAtHand(): AtHand {
  const { advice } = useUnit().file;
  const { id } = useContext(InsteadContext);
  const check = advice.other_checks.find((each) => each.id === id) ?? null;
  const remedy = advice.other_remedies.find((each) => each.id === id) ?? null;
  return check || remedy ? { check, remedy, isOwnChoice: true } : { check: advice.check, remedy: advice.remedy, isOwnChoice: false };
}
