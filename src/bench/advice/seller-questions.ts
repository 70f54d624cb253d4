import { meanOf } from '../../core/planning/index.ts';
import type { Refusal } from '../bench.ts';
import type { Claim } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { ScoutQuestion, SellerQuestions } from '../views/index.ts';
import type { Desk } from './desk.ts';
import { asksOf, unknownModel, weighLot } from './outlook.ts';
import { functionName, lower, money, percent, whole } from './say.ts';

/** So many functions are asked about: those of which it is least certain whether they work. */
const MOST = 5;
/** An answer that is known anyway is not asked for. */
const LEAST_DOUBT = 0.03;

/**
 * What to ask the seller before buying at the asked price, most worth first: the gain in expected money from deciding after the answer
 * instead of now. The answer is as honest as the seller has been; the lot is valued as in its outlook.
 */
export function sellerQuestions(desk: Desk, question: ScoutQuestion): SellerQuestions | Refusal {
  const model = desk.models.get(question.model_id);
  if (!model) return unknownModel(desk, question.model_id);
  const { currency } = desk.state.settings;
  const asks = asksOf(desk, question);
  const honesty = desk.honesty.chance(question.seller, null);
  const questions = doubtful(desk, model, question)
    .map((each) => questionOf(desk, model, question, each, { asks, honesty }))
    .sort((a, b) => b.worth_minor - a.worth_minor);
  return { currency, questions, why: whyOf(questions, honesty, asks, currency) };
}

interface Doubt {
  readonly function: string;
  readonly works: number;
}

/** Functions of which nothing is said, with the chance that each works as it comes. */
function doubtful(desk: Desk, model: Model, question: ScoutQuestion): Doubt[] {
  const said = new Set(question.claims.flatMap((claim) => (claim.about === 'function' ? [claim.function] : [])));
  const chances = new Map<string, number>();
  for (const { check, outcomes } of weighLot(desk, model, question).unit.decision.checks) {
    if (check.kind !== 'try' || check.with.length > 0 || said.has(check.function)) continue;
    chances.set(check.function, outcomes.find(({ outcome }) => outcome === 'works')?.chance ?? 0);
  }
  return [...chances]
    .map(([name, works]) => ({ function: name, works }))
    .filter(({ works }) => Math.min(works, 1 - works) > LEAST_DOUBT)
    .sort((a, b) => Math.abs(a.works - 0.5) - Math.abs(b.works - 0.5))
    .slice(0, MOST);
}

function questionOf(
  desk: Desk,
  model: Model,
  question: ScoutQuestion,
  { function: name, works }: Doubt,
  { asks, honesty }: { readonly asks: number; readonly honesty: number },
): SellerQuestions['questions'][number] {
  const worth = (says: 'works' | 'fails'): number => {
    const claim: Claim = { about: 'function', function: name, says };
    return meanOf(weighLot(desk, model, { ...question, claims: [...question.claims, claim] }).outcomes);
  };
  const [ifWorks, ifFails] = [worth('works'), worth('fails')];
  const saysWorks = honesty * works + (1 - honesty) * (1 - works);
  const now = Math.max(0, saysWorks * ifWorks + (1 - saysWorks) * ifFails - asks);
  const then = saysWorks * Math.max(0, ifWorks - asks) + (1 - saysWorks) * Math.max(0, ifFails - asks);
  const spec = model.file.functions.find(({ id }) => id === name);
  return {
    function: name,
    ask: spec?.question ?? `Does this work: ${lower(functionName(model, name))}?`,
    worth_minor: whole(Math.max(0, then - now)),
    works_chance: works,
    if_works_minor: whole(ifWorks),
    if_fails_minor: whole(ifFails),
  };
}

function whyOf(questions: SellerQuestions['questions'], honesty: number, asks: number, currency: string): string[] {
  const trust = `An answer is taken as right with ${percent(honesty)}.`;
  if (questions.length === 0) return ['Nothing is left to ask: every function is spoken of, or as good as known.', trust];
  const some = questions.some(({ worth_minor: worth }) => worth > 0);
  const bears = `Worth is what deciding after the answer brings more than deciding now, at ${money(asks, currency)}.`;
  return [some ? bears : `No single answer would change whether to buy at ${money(asks, currency)}.`, trust];
}
