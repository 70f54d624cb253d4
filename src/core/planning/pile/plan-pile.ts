import { planAlone } from './alone.ts';
import { copyOf, idleChoice, type Choice } from './choice.ts';
import type { SolveLinearProgram } from './linear-program.ts';
import type { ItemPlan, PilePlan } from './plan.ts';
import type { Pile } from './pile.ts';
import { problemOf, type Problem } from './problem.ts';
import { profitSpread } from './profit-spread.ts';
import { relaxationOf, type Relaxation } from './relaxation.ts';
import { choiceFrom } from './remembered.ts';
import { roundedChoice } from './rounded.ts';
import { earnedAMinute, searchPlan, trueAim, type Prices } from './search.ts';
import { secondBests } from './second-best.ts';
import { itemShares } from './shares.ts';
import { meanOfAll, simulate } from './simulate.ts';
import { Standing } from './standing.ts';
import { weeksOf } from './weeks.ts';

export interface PlanOptions {
  readonly seed: string;
  /** Solves the relaxation; without it the plan is found without prices to start from, and has no bound. */
  readonly solve?: SolveLinearProgram;
  /** The last plan: the search starts from it too. */
  readonly last?: PilePlan;
  readonly shouldStop?: () => boolean;
}

/** What comes out: the plan, and the choice behind it for questions that are asked afterwards. */
export interface Planned {
  readonly plan: PilePlan;
  readonly problem: Problem;
  readonly choice: Choice;
}

/** Sampled outcomes of the relaxation: few, as its prices only say where to start and its optimum is averaged anyway. */
const RELAXED_OUTCOMES = 24;
const OUTCOMES = 2000;
const NO_PRICES: Prices = { minuteMinor: 0, money: 0 };

/**
 * The plan of the pile: the same pile and seed give the same plan. Throws `PlanningError` for a pile whose names or chances do not fit
 * together; a relaxation that cannot be solved only leaves the bound out. Stopped early, it is the best so far.
 */
export async function planPile(pile: Pile, options: PlanOptions): Promise<Planned> {
  const problem = problemOf(pile);
  const { prices, boundMinor, rounded } = await relaxed(problem, options);
  const starts = [...(options.last ? [choiceFrom(problem, options.last)] : []), ...(rounded ? [rounded] : [])];
  const shouldStop = options.shouldStop ?? (() => false);
  const choice = searchPlan(problem, { seed: options.seed, prices, starts, shouldStop, again: options.last !== undefined });
  return { plan: describePlan(problem, choice, options.seed, prices, boundMinor), problem, choice };
}

interface Relaxed {
  readonly prices: Prices;
  readonly boundMinor: number | null;
  readonly rounded: Choice | null;
}

async function relaxed(problem: Problem, { seed, solve }: PlanOptions): Promise<Relaxed> {
  const nothing = { prices: NO_PRICES, boundMinor: null, rounded: null };
  if (!solve || problem.units.length === 0) return nothing;
  const relaxation = relaxationOf(problem, `${seed} relaxation`, RELAXED_OUTCOMES);
  const answer = await solve(relaxation.program);
  if (!answer.ok) return nothing;
  return {
    prices: readPrices(relaxation, answer.prices),
    boundMinor: answer.objective + relaxation.constant,
    rounded: roundedChoice(problem, relaxation, answer.x),
  };
}

/** Prices of a minute and of money from the duals of their rows; a minute counts in every outcome. */
export function readPrices({ hourRows, moneyRow }: Relaxation, duals: Float64Array): Prices {
  return { minuteMinor: hourRows.reduce((sum, row) => sum + Math.max(0, duals[row]!), 0), money: Math.max(0, duals[moneyRow]!) };
}

/** Everything that is said about a choice. */
export function describePlan(problem: Problem, choice: Choice, seed: string, prices: Prices, boundMinor: number | null): PilePlan {
  const standing = standingOf(problem, choice);
  const simulated = simulate(problem, choice, `${seed} shown`, OUTCOMES);
  const alone = planAlone(problem.pile);
  const { parts, models, fills } = problem;
  return {
    seed,
    items: itemsOf(standing, seed),
    fits: fills.flatMap(({ part, model, slot }, f) =>
      choice.fill[f]! > 0
        ? [{ part: parts[part]!.id, model: models[model]!.id, slot: models[model]!.slots[slot]!, count: choice.fill[f]! }]
        : [],
    ),
    baskets: basketsOf(standing),
    weeks: weeksOf(standing),
    spent: {
      moneyMinor: standing.cashMinor(),
      minutesNow: standing.minutesNow(),
      minutesExpected: meanOfAll(simulated.minutes),
      built: meanOfAll(simulated.built),
    },
    profit: profitSpread(simulated),
    against: {
      aloneMinor: meanOfAll(simulate(alone.problem, alone.choice, `${seed} shown`, OUTCOMES).profits),
      scrapMinor: new Standing(problem, idleChoice(problem), trueAim(problem, 0)).besidesMinor(),
    },
    boundMinor,
    prices: { hourMinor: 60 * prices.minuteMinor, money: prices.money },
  };
}

/** A choice, judged as the search judged it at the end. */
export function standingOf(problem: Problem, choice: Choice): Standing {
  const standing = new Standing(problem, copyOf(choice), trueAim(problem, 0));
  standing.aimAt(trueAim(problem, earnedAMinute(standing)));
  return standing;
}

function itemsOf(standing: Standing, seed: string): ItemPlan[] {
  const { problem, choice } = standing;
  const seconds = secondBests(standing);
  const shares = itemShares(standing, choice, `${seed} shown`);
  const unitOf = new Map(problem.units.map(({ id }, u) => [id, u]));
  const remediesOf = new Map<string, Record<string, string>>();
  problem.things.forEach(({ item, unit, assembly, options }, t) => {
    const remedy = options[choice.option[t]!]!.remedy;
    if (remedy && (unit < 0 || choice.open[unit] === 1)) remediesOf.set(item, { ...remediesOf.get(item), [assembly.slot]: remedy.id });
  });
  return problem.pile.items.map(({ id, model, keep, whole }) => ({
    item: id,
    model,
    does: keep ? 'keep' : !whole ? 'loose' : choice.open[unitOf.get(id)!] === 1 ? 'open' : 'as-is',
    remedies: remediesOf.get(id) ?? {},
    finishedShare: shares.get(id)?.finished ?? 0,
    donorShare: shares.get(id)?.donor ?? 0,
    second: seconds.get(id)?.best ?? null,
    otherwise: seconds.get(id)?.whole ?? null,
  }));
}

function basketsOf(standing: Standing): PilePlan['baskets'] {
  const { problem } = standing;
  const lines = standing.orders()?.lines ?? [];
  return problem.suppliers.flatMap(({ id, postageMinor }, s) => {
    const own = lines.filter(({ supplier }) => supplier === s);
    if (own.length === 0) return [];
    const { days } = problem.pile.suppliers.find((supplier) => supplier.id === id)!;
    return [
      {
        supplier: id,
        days,
        postageMinor,
        lines: own.map(({ part, count, costMinor }) => ({ part: problem.parts[part]!.id, count, costMinor })),
        costMinor: own.reduce((sum, { costMinor }) => sum + costMinor, postageMinor),
      },
    ];
  });
}
