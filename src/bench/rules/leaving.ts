import { called, itemAtHand, itemKnown } from './known.ts';
import { moneySound } from './money.ts';
import { nearest } from './nearest.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

export const proofStepDone: Rule<'proof-step-done'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => stepKnown(context, body.item_id, body.step),
    () =>
      body.outcome === 'signed-off' && body.reason === ''
        ? refuse('reason-missing', 'body.reason', 'a step that is signed off without passing needs a reason that a buyer may read')
        : null,
  );

/** The grade closes the proof, so that "proved" is never said of a unit with a step left open. */
export const graded: Rule<'graded'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => (body.grade === 'parts' ? null : proofComplete(context, body.item_id, 'body.grade', 'grade it "parts"')),
  );

export const sold: Rule<'sold'> = (context, { body }) =>
  firstOf(
    () => standsAlone(context, body.item_id),
    () => (body.as === 'for-parts' ? null : proofComplete(context, body.item_id, 'body.as', 'sell it for parts')),
    () => moneySound(context, body, Math.max(body.price_minor, body.postage_charged_minor, body.fees_minor, body.postage_minor)),
  );

export const returned: Rule<'returned'> = (context, { body }) =>
  firstOf(
    () => itemKnown(context, body.item_id),
    () => wasSold(context, body.item_id),
  );

/** Known, still here, and not inside a unit: what can be listed, sold, kept or scrapped by itself. */
export function standsAlone(context: RuleContext, itemId: string): Objection | null {
  const away = itemAtHand(context, itemId);
  if (away) return away;
  const item = context.state.items.get(itemId)!;
  const home = context.state.items.get(item.inside ?? '');
  return home ? refuse('still-inside', 'body.item_id', `${called(item)} sits in ${called(home)}; take it out first`) : null;
}

function wasSold({ state }: RuleContext, itemId: string): Objection | null {
  const item = state.items.get(itemId)!;
  if (item.status === 'sold' && item.sale) return null;
  const why = item.status === 'sold' ? 'left with the unit that it sits in; record the return of that' : 'was not sold';
  return refuse('not-sold', 'body.item_id', `${called(item)} ${why}`);
}

function stepKnown(context: RuleContext, itemId: string, step: string): Objection | null {
  const steps = context.proofSteps(itemId).steps.map((known) => known.id);
  if (steps.includes(step)) return null;
  return refuse('unknown-step', 'body.step', `the proof has no step "${step}"; its steps are ${nearest(step, steps)}`);
}

/** A loose assembly cannot be proved by itself, so only units are asked for their proof. */
function proofComplete(context: RuleContext, itemId: string, field: string, wayOut: string): Objection | null {
  const item = context.state.items.get(itemId)!;
  if (item.kind !== 'unit') return null;
  const open = context.proofSteps(itemId).steps.filter((step) => step.outcome === 'open' || step.outcome === 'fail');
  if (open.length === 0) return null;
  const steps = open.map((step) => `${step.name} (${step.id}${step.outcome === 'fail' ? ', failed' : ''})`).join(', ');
  return refuse(
    'proof-incomplete',
    field,
    `the proof of ${called(item)} is not complete: ${steps}; do these, sign them off with a reason, or ${wayOut}`,
  );
}
