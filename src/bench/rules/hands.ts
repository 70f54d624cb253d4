import { inModelOf, itemAtHand } from './known.ts';
import { firstOf, refuse, type Rule } from './rule.ts';

/** The step is one of the model; putting back asks that it was done. */
export const stepDone: Rule<'step-done'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => inModelOf(context, body.item_id, 'steps', body.step, 'body.step'),
    () => {
      const opened = context.state.items.get(body.item_id)!.opened;
      if (body.way === 'in' || opened.includes(body.step)) return null;
      const done = opened.length === 0 ? 'nothing is open' : `what is open is: ${opened.join(', ')}`;
      return refuse('not-open', 'body.step', `"${body.step}" was not done, so it cannot be put back; ${done}`);
    },
  );

/** The set is one of the model, and no more of what came out are foreign than came out. */
export const fastenersCounted: Rule<'fasteners-counted'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => inModelOf(context, body.item_id, 'fasteners', body.fasteners, 'body.fasteners'),
    () =>
      body.foreign <= body.count
        ? null
        : refuse('too-many-foreign', 'body.foreign', `${body.foreign} of another kind are more than the ${body.count} counted`),
  );
