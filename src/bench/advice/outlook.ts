import { chanceBelow, meanOf, quantileOf, sumOf, sumOfAlike, type Outcome } from '../../core/planning/index.ts';
import { convertMinor } from '../../core/quantity/index.ts';
import type { Refusal } from '../bench.ts';
import { claimKind, CLAIM_WORDS } from '../learning/index.ts';
import type { Model } from '../models/index.ts';
import type { HistoryEntry } from '../state.ts';
import type { OutlookView, Road, ScoutQuestion } from '../views/index.ts';
import { hypothesesOf } from './belief-view.ts';
import { honestyOf } from './blank-outlook.ts';
import type { Desk, Weighed } from './desk.ts';
import { evidenceOf } from './evidence.ts';
import { freshUnit } from './fresh-unit.ts';
import { listed, minutesText, money, percent, whole } from './say.ts';
import { clamp, nothingWrong } from './well-chance.ts';

/**
 * From here on a lot is a matter of haggling: it would be worth its price if it came down by a quarter or less, or it
 * is worth it but more likely than this ends below its price. Common practice, no source.
 */
const HAGGLE_UP_TO = 1.33;
const BOLD_LOSS_CHANCE = 0.5;

/** What a lot is expected to bring to this bench from the day it comes, and so the price above which it is expected to lose. */
export function outlookOf(desk: Desk, question: ScoutQuestion): OutlookView | Refusal {
  const model = desk.models.get(question.model_id);
  if (!model) return unknownModel(desk, question.model_id);
  const lot = weighLot(desk, model, question);
  const { currency } = desk.state.settings;
  const asksMinor = asksOf(desk, question);
  const valueMinor = meanOf(lot.outcomes);
  const ceilingMinor = Math.max(0, Math.floor(valueMinor + 1e-6));
  const lossChance = chanceBelow(lot.outcomes, asksMinor);
  const verdict = verdictOn(asksMinor, ceilingMinor, lossChance);
  const honesty = honestyOf(desk, question.seller);
  return {
    currency,
    hypotheses: hypothesesOf(model, lot.unit.judged.belief),
    works_as_is: nothingWrong(lot.unit.judged.belief),
    mendable: clamp(lot.mendable),
    value_minor: whole(valueMinor),
    low_minor: whole(quantileOf(lot.outcomes, 0.1)),
    high_minor: whole(quantileOf(lot.outcomes, 0.9)),
    ceiling_minor: ceilingMinor,
    asks_minor: asksMinor,
    loss_chance: lossChance,
    minutes: Math.round(lot.minutes * 10) / 10,
    verdict,
    honesty,
    why: [
      verdictWhy(verdict, asksMinor, ceilingMinor, lossChance, currency),
      ...lotWhy(lot, question, currency),
      honestyWhy(desk, question),
      'This ceiling is what the lot is expected to bring by itself, minutes paid; it leaves no profit. What it is worth to your pile, with a profit and the risk that you set, is reckoned apart.',
      ...lot.unit.decision.prices.assumed,
    ],
  };
}

/** What is asked with postage and tax, in the currency of the bench. */
export function asksOf(
  { state }: Desk,
  asked: Pick<ScoutQuestion, 'price_minor' | 'postage_minor' | 'tax_minor' | 'currency' | 'rate'>,
): number {
  const own = state.settings.currency;
  return convertMinor(asked.price_minor + asked.postage_minor + asked.tax_minor, asked.currency ?? own, own, asked.rate);
}

interface Lot {
  readonly unit: Weighed;
  readonly completed: number;
  readonly outcomes: readonly Outcome[];
  readonly mendable: number;
  readonly minutes: number;
}

/** Units of the lot are alike and independent; the drawer can complete no more of them than it has donors. */
export function weighLot(desk: Desk, model: Model, question: ScoutQuestion): Lot {
  const item = freshUnit(model);
  const judged = desk.beliefs.on(model, claimsAsEvidence(desk, model, question));
  const donors = desk.donorsFor(item, judged, new Set());
  const plain = desk.weighJudged(item, judged, new Map());
  const helped = donors.size > 0 ? desk.weighJudged(item, judged, donors) : plain;
  const slot = helped.decision.weighed.best === 'transplant' ? helped.decision.swap.slot : null;
  const completed = Math.min(question.count, slot === null ? 0 : donors.get(slot)!.length);
  const groups = [
    { count: completed, option: bestOption(helped) },
    { count: question.count - completed, option: bestOption(plain) },
  ].filter(({ count }) => count > 0);
  const average = (of: (option: ReturnType<typeof bestOption>) => number): number =>
    groups.reduce((sum, { count, option }) => sum + count * of(option), 0);
  return {
    unit: completed > 0 ? helped : plain,
    completed,
    outcomes: groups.map(({ count, option }) => sumOfAlike(option.outcomes, count)).reduce(sumOf),
    mendable: average((option) => option.chance) / question.count,
    minutes: average((option) => option.minutes),
  };
}

const bestOption = ({ decision }: Weighed) => decision.options.find((option) => option.road === decision.weighed.best)!;

/** What a seller says, as evidence on a fresh unit. */
export function claimsAsEvidence(desk: Desk, model: Model, question: Pick<ScoutQuestion, 'claims' | 'seller'>) {
  const item = { ...freshUnit(model), proof: new Map() };
  const life = question.claims.map((claim): HistoryEntry => ({ kind: 'claim', claim, seller: question.seller, eventId: 'claim', at: '' }));
  return evidenceOf(item, life, model, {
    honesty: (seller, claim) => desk.honesty.chance(seller, claimKind(claim)),
    incoming: () => ({}),
  });
}

/** Whether a lot is for buying, haggling or leaving at what is asked. */
export function verdictOn(asksMinor: number, ceilingMinor: number, lossChance: number): OutlookView['verdict'] {
  if (asksMinor <= ceilingMinor) return lossChance > BOLD_LOSS_CHANCE ? 'haggle' : 'buy';
  return asksMinor <= ceilingMinor * HAGGLE_UP_TO ? 'haggle' : 'leave';
}

function verdictWhy(verdict: OutlookView['verdict'], asks: number, ceiling: number, lossChance: number, currency: string): string {
  const loss = `${percent(lossChance)} that it ends below that`;
  const prices = `asked is ${money(asks, currency)} with postage, the ceiling is ${money(ceiling, currency)}`;
  if (verdict === 'buy') return `Buy: ${prices}; ${loss}.`;
  if (verdict === 'leave') return `Leave it: ${prices}; ${loss}.`;
  return asks > ceiling ? `Haggle: ${prices}; ${loss}.` : `Haggle: ${prices}, but ${loss}.`;
}

const ROAD_WORDS: Readonly<Record<Road, string>> = {
  repair: 'mending them',
  transplant: 'completing them from the drawer',
  'part-out': 'taking them apart',
  leave: 'selling them on as they are',
};

function lotWhy({ unit, completed, minutes }: Lot, { count }: ScoutQuestion, currency: string): string[] {
  const { decision } = unit;
  const road = decision.weighed.best;
  const each = decision.weighed.worth.find((worth) => worth.road === road)!.valueMinor;
  const some = completed > 0 && completed < count ? ` (the drawer completes ${completed} of ${count})` : '';
  return [
    `The best road is ${ROAD_WORDS[road]}${some}: ${money(each, currency)} a unit, ${minutesText(minutes)} for the lot.`,
    ...decision.options.find((option) => option.road === road)!.why,
    'What checks may save on the way is not counted.',
  ];
}

function honestyWhy({ honesty }: Desk, { seller, claims }: ScoutQuestion): string {
  const kinds = [...new Set(claims.map(claimKind))].filter((kind) => kind !== null);
  if (kinds.length === 0) return 'Nothing is claimed, so only the rates of the model count.';
  const checked = honesty.claimsChecked(seller);
  const learned = checked === 0 ? 'none of theirs was checked yet' : `${checked} of theirs ${checked === 1 ? 'was' : 'were'} checked`;
  const taken = kinds.map((kind) => `one ${CLAIM_WORDS[kind]} is taken as right with ${percent(honesty.chance(seller, kind))}`);
  return `Of the claims of ${seller === '' ? 'this seller' : seller}, ${listed(taken)}; ${learned}.`;
}

/** There is no such model here; the names that there are. */
export function unknownModel(desk: Desk, name: string): Refusal {
  const names = [...desk.models.keys()];
  const message =
    names.length > 0
      ? `"${name}" is not a known model; there are ${names.join(', ')}`
      : `"${name}" is not a known model; there is none yet`;
  return { ok: false, code: 'unknown-model', index: 0, field: 'model_id', message };
}
