import { inModelOf, itemAtHand, itemKnown } from './known.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

export const claimMade: Rule<'claim-made'> = (context, { body }) =>
  firstOf(
    () => itemKnown(context, body.item_id),
    () =>
      body.claim.about === 'function' ? inModelOf(context, body.item_id, 'functions', body.claim.function, 'body.claim.function') : null,
  );

export const trialDone: Rule<'trial-done'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => inModelOf(context, body.item_id, 'functions', body.function, 'body.function'),
    ...body.with.map((accessory, index) => () => inModelOf(context, body.item_id, 'accessories', accessory, `body.with.${index}`)),
  );

export const readingTaken: Rule<'reading-taken'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => inModelOf(context, body.item_id, 'points', body.point, 'body.point'),
    () => modeOfPoint(context, body),
  );

export const remedyDone: Rule<'remedy-done'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => inModelOf(context, body.item_id, 'remedies', body.remedy, 'body.remedy'),
  );

/** A point is a place and a way to measure it; its reference says nothing of another way. */
function modeOfPoint({ state, models }: RuleContext, body: { item_id: string; point: string; mode: string }): Objection | null {
  const model = models.get(state.items.get(body.item_id)!.modelId);
  const point = model?.file.points.find((candidate) => candidate.id === body.point);
  if (!point || point.mode === body.mode) return null;
  return refuse('wrong-mode', 'body.mode', `${point.name} is measured in ${point.mode}, not in ${body.mode}`);
}
