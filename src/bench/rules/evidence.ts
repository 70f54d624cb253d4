import { partRemedyNamed } from '../boards/part-remedies.ts';
import { regionArea, type Region } from '../events/index.ts';
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

/** A region lies on the board of its model and is more than a line. */
export const findingNoted: Rule<'finding-noted'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => (body.region ? regionOnBoard(context, body.item_id, body.region) : null),
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

/** Smaller than a pad, an area is a slip of the finger, mm². */
const LEAST_AREA_MM2 = 0.1;
/** What lies over the edge by less was drawn at the edge, mm. */
const OVER_THE_EDGE_MM = 0.5;

function regionOnBoard({ state, models }: RuleContext, itemId: string, region: Region): Objection | null {
  const model = models.get(state.items.get(itemId)!.modelId);
  if (!model) return null;
  const { board, name } = model.file;
  if (!board) return refuse('off-the-board', 'body.region', `${name} has no picture of a board to draw on`);
  const on = (at: number, size: number): boolean => at >= -OVER_THE_EDGE_MM && at <= size + OVER_THE_EDGE_MM;
  const corner = region.polygon.findIndex(([x, y]) => !on(x, board.width_mm) || !on(y, board.height_mm));
  if (corner >= 0) {
    const at = region.polygon[corner]!.join(', ');
    const size = `${board.width_mm} × ${board.height_mm} mm`;
    return refuse(
      'off-the-board',
      `body.region.polygon.${corner}`,
      `the corner at ${at} lies beside the board of ${name}, which is ${size}`,
    );
  }
  return regionArea(region) >= LEAST_AREA_MM2 ? null : refuse('off-the-board', 'body.region.polygon', 'the region is only a line or a dot');
}
