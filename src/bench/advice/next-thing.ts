import { paysForItself, type RankedCheck, type RankedRemedy } from '../../core/diagnosis/index.ts';
import type { BenchState } from '../../core/diagnosis/readings/index.ts';
import type { HistoryEntry, Item } from '../state.ts';
import type { AdviceView, ProofView } from '../views/index.ts';
import { adviceId } from './advice-id.ts';
import type { Judged } from './beliefs.ts';
import { doubtedReading } from './board/doubted-reading.ts';
import { checkHeadline, checkView } from './check-view.ts';
import type { Decision } from './decision.ts';
import { donorWords } from './donors.ts';
import { LEAST_BITS, tellsMore } from './knowing.ts';
import { FIND_FIRST } from './repair-road.ts';
import { remedyView, swapView, type Bench, type ReckonedRemedy } from './remedy-view.ts';
import { hourly } from './road-option.ts';
import { trialsSinceWork } from './trials-since-work.ts';
import { nothingWrong } from './well-chance.ts';
import { listed, lower, money, percent, remedyName, slotName } from './say.ts';

/** All that the next thing to do is chosen from. */
export interface Thinking {
  readonly item: Item;
  readonly life: readonly HistoryEntry[];
  readonly judged: Judged;
  readonly decision: Decision;
  /** Best first. Reckoned when asked for. */
  readonly remedies: () => readonly RankedRemedy[];
  readonly proof: ProofView;
  readonly bench: Bench;
  /** How the bench stands after the last reading, where a circuit tells of points. */
  readonly standing: BenchState | null;
}

type Chosen = Pick<AdviceView, 'do' | 'id' | 'headline' | 'why'> & Partial<Pick<AdviceView, 'check' | 'remedy'>>;

const MOST_RUNNERS_UP = 5;
/** Less likely well than this, a unit need not be tried before work. Common practice, no source. */
const HARDLY_WELL = 0.05;
const LIKELY_WELL = 0.5;

/** The one next thing for a unit under work, with its why and the runners-up. */
export function nextThing(thinking: Thinking): AdviceView {
  const chosen = chooseNext(thinking);
  const { judged, remedies, bench, item } = thinking;
  const cost = { currency: bench.currency, hourMinor: thinking.decision.prices.hourMinor };
  return {
    check: null,
    remedy: null,
    ...chosen,
    other_checks: checksInOrder(thinking)
      .filter((ranked) => ranked.check.id !== chosen.check?.id && ranked.bits > LEAST_BITS)
      .slice(0, MOST_RUNNERS_UP)
      .map((ranked) => checkView(judged, ranked, cost, thinking.standing)),
    other_remedies: remedies()
      .filter((ranked) => ranked.remedy.id !== chosen.remedy?.id && ranked.chance > 0)
      .slice(0, MOST_RUNNERS_UP)
      .map((ranked) => remedyView(judged, ranked, bench)),
    declined: declinedBy(item),
  };
}

export const declinedBy = (item: Item): AdviceView['declined'] => [...item.declined].map(([id, reason]) => ({ id, reason }));

/** What to do next, without the runners-up; nothing where the person has put just that aside. */
export function chooseNext(thinking: Thinking): Chosen {
  const chosen = choose(thinking);
  return thinking.item.declined.has(chosen.id) ? aside(chosen) : chosen;
}

const aside = ({ headline }: Chosen): Chosen => ({
  do: 'nothing',
  id: 'nothing',
  headline: 'Nothing else is worth doing',
  why: [`You put this aside: ${lower(headline)}. Undo that in the log, or record what you did instead.`],
});

/** A check that was answered since the last work is not asked again; it stays among the runners-up. */
function choose(thinking: Thinking): Chosen {
  const { proof, judged, decision } = thinking;
  if (proof.ready) return afterProof(thinking);
  if (decision.unproved.length === 0 && worksThroughout(thinking))
    return prove(thinking, ['Every function was tried since the last work on it, and works.']);
  const fresh = checksInOrder(thinking).filter(({ repeat }) => !repeat);
  const telling = searches(thinking) ? fresh.find(tellsMore) : undefined;
  if (telling) return search(thinking, telling);
  const [best] = fresh;
  if (best && judged.belief.absent.size === 0 && paysForItself(best, decision.stakes)) return doCheck(thinking, best);
  const acting = best
    ? `No check is worth its minutes now: the best, "${checkHeadline(judged, best)}", saves ${money(best.savingMinor, decision.prices.currency)}.`
    : '';
  return act(thinking, acting ? [acting] : []);
}

function search(thinking: Thinking, ranked: RankedCheck): Chosen {
  const check = doCheck(thinking, ranked);
  return { ...check, why: [...check.why, ...thinking.decision.repair.option.why.filter((line) => line.startsWith(FIND_FIRST))] };
}

/** On a road of repair where the trouble has to be found first, checks are worth what they tell, not only what the very next step saves. */
const searches = ({ decision }: Thinking): boolean => decision.weighed.best === 'repair' && decision.repair.lookFirst;

function checksInOrder(thinking: Thinking): readonly RankedCheck[] {
  const { checks } = thinking.decision;
  return searches(thinking) ? [...checks].sort((a, b) => bitRate(b) - bitRate(a)) : checks;
}

const bitRate = (ranked: RankedCheck): number => ranked.bits / Math.max(ranked.minutes, 0.5);

/**
 * Nothing is worked on, taken apart or given away that has not been seen to fail since the last work on it, unless it
 * can hardly be well: first it is tried, or proved where it is likelier well than not. Null when that is done.
 */
function tryFirst(thinking: Thinking): Chosen | null {
  const well = nothingWrong(thinking.judged.belief);
  if (thinking.decision.unproved.length > 0) return null;
  if (well < HARDLY_WELL || trialsSinceWork(thinking.life, thinking.proof).failed) return null;
  const why = `Nothing was seen to fail since the last work on it: ${percent(well)} that nothing is wrong.`;
  if (well >= LIKELY_WELL) return prove(thinking, [why]);
  const trials = thinking.decision.checks.filter(({ check, repeat }) => check.kind === 'try' && check.with.length === 0 && !repeat);
  const [best] = [...trials].sort((a, b) => bitRate(b) - bitRate(a));
  if (!best) return null;
  const check = doCheck(thinking, best);
  return { ...check, why: [why, ...check.why] };
}

function act(thinking: Thinking, why: readonly string[]): Chosen {
  const first = tryFirst(thinking);
  if (first) return first;
  const { decision, judged } = thinking;
  const road = decision.weighed.best;
  const reasons = [...failedProof(thinking), ...why, ...decision.options.find((option) => option.road === road)!.why];
  if (road === 'transplant') return doSwap(thinking, reasons);
  if (road === 'repair') {
    const [step] = decision.repair.plan.steps;
    return step
      ? doRemedy(thinking, step, why)
      : prove(thinking, [`${percent(nothingWrong(judged.belief))} that nothing is wrong with it any more.`]);
  }
  const headline =
    road === 'part-out'
      ? `Take it apart for its ${listed(decision.parts.slots.map((slot) => lower(slotName(judged.model, slot))))}`
      : 'Leave it: sell it as it is, for parts';
  return { do: road, id: adviceId('road', road), headline, why: reasons };
}

/** The reason why a unit takes another road than repair, where it failed its proof. */
function failedProof({ proof, decision }: Thinking): string[] {
  const failed = proof.steps.filter(({ outcome }) => outcome === 'fail').map(({ name }) => lower(name));
  if (failed.length === 0) return [];
  const repair = decision.repair.option;
  return [`It failed its proof (${listed(failed)}).`, ...(repair.possible ? [] : repair.why)];
}

function doCheck({ judged, decision, bench, standing }: Thinking, ranked: RankedCheck): Chosen {
  const check = checkView(judged, ranked, { currency: bench.currency, hourMinor: decision.prices.hourMinor }, standing);
  const doubted = judged.board && doubtedReading(judged.board.belief, judged.evidence);
  const again =
    doubted?.point === check.target
      ? [`The last reading there disagrees with the rest: ${percent(doubted.slip)} that it says nothing.`]
      : [];
  const why = [...again, ...check.why];
  return { do: 'check', id: adviceId('check', check.id), headline: checkHeadline(judged, ranked), why, check };
}

function doRemedy({ judged, bench }: Thinking, step: ReckonedRemedy, why: readonly string[]): Chosen {
  const remedy = remedyView(judged, step, bench);
  return {
    do: 'remedy',
    id: adviceId('remedy', remedy.id),
    headline: remedyName(judged.model, step.remedy.id),
    why: [...remedy.why, ...why],
    remedy,
  };
}

function doSwap({ judged, decision, bench }: Thinking, why: readonly string[]): Chosen {
  const { slot, donor, option } = decision.swap;
  const cost = hourly(option.minutes, decision.prices.hourMinor) + option.spendMinor + donor!.valueMinor;
  const view = swapView(judged, slot!, Math.min(1, option.chance), option.minutes, cost, bench);
  const headline = `Give it ${donorWords(judged.model, slot!, donor!)}`;
  return { do: 'transplant', id: adviceId('road', 'transplant'), headline, why: [...why], remedy: { ...view, why: [...why] } };
}

/** Open steps first, then those that failed; a declined one is passed over while others are left. */
function prove({ item, proof }: Thinking, why: readonly string[]): Chosen {
  const due = [...proof.steps.filter((step) => step.outcome === 'open'), ...proof.steps.filter((step) => step.outcome === 'fail')];
  const step = due.find(({ id }) => !item.declined.has(adviceId('prove', id))) ?? due[0]!;
  const again =
    step.outcome === 'fail' ? ['It failed before: mend what was wrong, then prove it again. If it cannot be mended, put this aside.'] : [];
  return {
    do: 'prove',
    id: adviceId('prove', step.id),
    headline: `Prove it: ${lower(step.name)}`,
    why: [...why, ...again, step.how, `${due.length} of ${proof.steps.length} steps of proof are left.`],
  };
}

function afterProof({ item, decision, bench }: Thinking): Chosen {
  if (!item.grade)
    return {
      do: 'grade',
      id: 'grade',
      headline: 'Grade its condition',
      why: ['All steps of proof are done; the grade says honestly how it looks.'],
    };
  if (!item.declined.has('list'))
    return {
      do: 'list',
      id: 'list',
      headline: 'Offer it for sale',
      why: [`Proved and graded ${item.grade.grade}.`, decision.prices.whyWorking],
    };
  return {
    do: 'sell',
    id: 'sell',
    headline: 'Record the sale when it is sold',
    why: [`Worth ${money(decision.prices.workingMinor, bench.currency)} to you when it sells.`],
  };
}

/** Every function was tried since the last work, with no known-good accessory, and the last trial of each worked. */
function worksThroughout({ life, judged, proof }: Thinking): boolean {
  const { works } = trialsSinceWork(life, proof);
  return judged.model.file.functions.every((fn) => works.has(fn.id));
}
