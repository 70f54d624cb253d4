import type { Item } from '../state.ts';

type History = Item['history'];

/**
 * The same function of an item that looks at its history alone, worked out anew only when the history has grown: a state folds histories in place and only ever adds to
 * them; what takes entries away folds everything anew.
 */
export function byHistory<Answer>(answer: (item: Pick<Item, 'history'>) => Answer): (item: Pick<Item, 'history'>) => Answer {
  const known = new WeakMap<History, { readonly length: number; readonly answer: Answer }>();
  return ({ history }) => {
    const before = known.get(history);
    if (before?.length === history.length) return before.answer;
    const fresh = answer({ history });
    known.set(history, { length: history.length, answer: fresh });
    return fresh;
  };
}
