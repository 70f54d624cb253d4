import { partRemedyNamed } from '../boards/part-remedies.ts';
import type { Model } from '../models/index.ts';
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
    () => (boardPoint(context, body) ? null : inModelOf(context, body.item_id, 'points', body.point, 'body.point')),
    () => modeOfPoint(context, body),
  );

export const remedyDone: Rule<'remedy-done'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => (isOnParts(context, body) ? null : inModelOf(context, body.item_id, 'remedies', body.remedy, 'body.remedy')),
  );

const modelOf = ({ state, models }: RuleContext, itemId: string): Model | undefined => models.get(state.items.get(itemId)?.modelId ?? '');

/** A point of the circuit that the file of the model does not name. */
function boardPoint(context: RuleContext, { item_id: item, point }: { item_id: string; point: string }) {
  const model = modelOf(context, item);
  if (!model || model.file.points.some(({ id }) => id === point)) return undefined;
  return context.boardPoints?.(model).find(({ id }) => id === point);
}

/** Work on one part of the board, or between two of its nets. */
function isOnParts(context: RuleContext, { item_id: item, remedy }: { item_id: string; remedy: string }): boolean {
  const model = modelOf(context, item);
  return model !== undefined && partRemedyNamed(model, remedy) !== null;
}

/** A point is a place and a way to measure it; its reference says nothing of another way. */
function modeOfPoint(context: RuleContext, body: { item_id: string; point: string; mode: string }): Objection | null {
  const named = modelOf(context, body.item_id)?.file.points.find((candidate) => candidate.id === body.point);
  const point = named ?? boardPoint(context, body);
  if (!point || point.mode === body.mode) return null;
  return refuse('wrong-mode', 'body.mode', `${point.name} is measured in ${point.mode}, not in ${body.mode}`);
}
