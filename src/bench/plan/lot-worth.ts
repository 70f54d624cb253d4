import {
  ceilingOf,
  winnersBias,
  type Ceiling,
  type LotState,
  type PileItem,
  type PilePlan,
  type PricePoint,
} from '../../core/planning/index.ts';
import type { Desk } from '../advice/desk.ts';
import { freshUnit } from '../advice/fresh-unit.ts';
import { asksOf, claimsAsEvidence, unknownModel, verdictOn } from '../advice/outlook.ts';
import { money, percent, whole } from '../advice/say.ts';
import type { Refusal } from '../bench.ts';
import type { LotQuestion, LotView } from '../views/index.ts';
import type { WeighLot } from './jobs.ts';
import { stockOf, type PlannedPile } from './pile-of.ts';
import { planUnit } from './plan-items.ts';
import { planModel } from './plan-model.ts';
import { planWishes, type PlanWishes } from './plan-wishes.ts';

/** States of a lot that are looked at: the more, the closer the chance of a loss; the fewer, the sooner. */
const STATES = 60;
const MOST_UNITS = 40;

/** A pile with its plan, as far as there is one. */
export interface PlanInHand {
  readonly from: PlannedPile;
  readonly plan: Pick<PilePlan, 'items' | 'fits'>;
}

/** What a lot is worth to the pile as it is planned, and the most to pay for it. */
export async function lotWorth(
  desk: Desk,
  weigh: (job: WeighLot) => Promise<readonly LotState[]>,
  { from, plan }: PlanInHand,
  question: LotQuestion,
): Promise<LotView | Refusal> {
  const missing = question.units.find(({ model_id: id }) => !desk.models.has(id));
  if (missing) return unknownModel(desk, missing.model_id);
  if (question.units.reduce((sum, { count }) => sum + count, 0) > MOST_UNITS) return tooMany();
  const lot = lotItems(desk, question, 'of the lot');
  const pile = withLot(desk, from, lot);
  const states = await weigh({ kind: 'lot', pile, plan, lot, states: STATES, seed: seedOf(question) });
  return lotView(desk, question, states);
}

const tooMany = (): Refusal => ({
  ok: false,
  code: 'bad-event',
  index: 0,
  field: 'units',
  message: `a lot is weighed with at most ${MOST_UNITS} units; weigh a part of it`,
});

/** One lot, one seed: asked again it is the same. */
const seedOf = ({ units }: LotQuestion): string => JSON.stringify(units);

/** The units of the lot as the plan would see them if they were here, named after it. */
export function lotItems(desk: Desk, question: LotQuestion, name: string): PileItem[] {
  return question.units.flatMap(({ model_id: id, count, claims }, kind) => {
    const model = desk.models.get(id)!;
    const item = freshUnit(model);
    const judged = desk.beliefs.on(model, claimsAsEvidence(desk, model, { seller: question.seller, claims }));
    const unit = planUnit(desk, item, judged);
    return Array.from({ length: count }, (_, i) => ({ ...unit, id: `${name} ${kind + 1}.${i + 1}` }));
  });
}

/** The pile with the models, parts and suppliers that the lot needs, its units still outside. */
export function withLot(desk: Desk, { pile }: PlannedPile, lot: readonly PileItem[]): PlannedPile['pile'] {
  const known = new Set(pile.models.map(({ id }) => id));
  const names = [...new Set([...known, ...lot.map(({ model }) => model)])];
  const models = names.flatMap((id) => desk.models.get(id) ?? []);
  const further = models.filter(({ file }) => !known.has(file.id)).map((model) => planModel(desk.state, model));
  return { ...pile, ...stockOf(desk, models, [...pile.items, ...lot]), models: [...pile.models, ...further] };
}

function lotView(desk: Desk, question: LotQuestion, states: readonly LotState[]): LotView {
  const { currency, hourValueMinor } = desk.state.settings;
  const wishes = planWishes(desk.state);
  const asksMinor = asksOf(desk, question);
  const worthMinor = averageOf(states.map(({ expectedMinor }) => expectedMinor));
  const errorMinor = wishes.errorShare * Math.max(0, worthMinor);
  const asked = { lossChance: wishes.lotLossChance, perHourMinor: wishes.lotPerHourMinor, errorMinor, bidders: wishes.bidders };
  const ceiling = ceilingOf(states, asked, hourValueMinor, seedOf(question));
  const atAsked = pointAt(ceiling, asksMinor);
  return {
    currency,
    asks_minor: asksMinor,
    worth_minor: whole(worthMinor),
    bias_minor: whole(winnersBias(errorMinor, wishes.bidders)),
    ceiling_minor: Math.floor(ceiling.ceilingMinor),
    by_loss_minor: whole(finite(ceiling.byLossMinor)),
    by_hour_minor: whole(ceiling.byHourMinor),
    minutes: Math.round(averageOf(states.map(({ minutes }) => minutes))),
    at_asked: pointView(atAsked),
    curve: ceiling.curve.map(pointView),
    states: states.length,
    verdict: verdictOn(asksMinor, ceiling.ceilingMinor, atAsked.lossChance),
    why: whyOf(question, wishes, ceiling, worthMinor, errorMinor, currency),
  };
}

const averageOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
/** Fewer states than the accepted chance could tell apart leave no price by loss. */
const finite = (minor: number): number => (Number.isFinite(minor) ? minor : 0);

/** The curve at a price, straight between its points and on beyond them. */
function pointAt({ curve }: Ceiling, priceMinor: number): PricePoint {
  const after = Math.max(
    1,
    curve.findIndex((point) => point.priceMinor >= priceMinor),
  );
  const [a, b] = priceMinor > curve.at(-1)!.priceMinor ? [curve.at(-2)!, curve.at(-1)!] : [curve[after - 1]!, curve[after]!];
  const share = b.priceMinor > a.priceMinor ? (priceMinor - a.priceMinor) / (b.priceMinor - a.priceMinor) : 0;
  const between = (from: number, to: number): number => from + share * (to - from);
  return {
    priceMinor,
    profitMinor: b.profitMinor + b.priceMinor - priceMinor,
    lossChance: Math.min(1, Math.max(0, between(a.lossChance, b.lossChance))),
    perHourMinor: a.perHourMinor === null || b.perHourMinor === null ? null : between(a.perHourMinor, b.perHourMinor),
  };
}

const pointView = (point: PricePoint) => ({
  price_minor: whole(point.priceMinor),
  profit_minor: whole(point.profitMinor),
  loss_chance: point.lossChance,
  per_hour_minor: point.perHourMinor === null ? null : whole(point.perHourMinor),
});

function whyOf(
  { units }: LotQuestion,
  wishes: PlanWishes,
  { byLossMinor, byHourMinor }: Ceiling,
  worthMinor: number,
  errorMinor: number,
  currency: string,
): string[] {
  const count = units.reduce((sum, unit) => sum + unit.count, 0);
  const bias = winnersBias(errorMinor, wishes.bidders);
  const byLoss = Number.isFinite(byLossMinor) ? money(byLossMinor, currency) : 'nothing';
  return [
    `With ${count === 1 ? 'it' : `these ${count}`} the plan of your pile earns ${money(worthMinor, currency)} more, hours, drawer and orders counted.`,
    `For a loss at most ${percent(wishes.lotLossChance)} of the time the most to pay is ${byLoss}; for ${money(wishes.lotPerHourMinor, currency)} an hour it is ${money(byHourMinor, currency)}. The lower of the two is the ceiling.`,
    `${money(bias, currency)} is taken off: among ${wishes.bidders} who judge such lots to ${percent(wishes.errorShare)} either way, who bids most has likely judged too high.`,
  ];
}
