import {
  baseOf,
  brokenLaws,
  choiceFrom,
  describePlan,
  donorWorths,
  lotStates,
  overridden,
  planPile,
  problemOf,
  worthOfLimits,
  worthOfMore,
  type Base,
  type DonorWorth,
  type Grown,
  type LotState,
  type Override,
  type Pile,
  type PileItem,
  type PilePlan,
  type Planned,
  type SolveLinearProgram,
} from '../../core/planning/index.ts';

/** What is worked out aside, as it may take seconds. All of it is plain data, fit to be sent to a worker. */
export type PlanJob = MakePlan | AskRegret | WeighLot | CompareLots;

export interface MakePlan {
  readonly kind: 'make';
  readonly pile: Pile;
  readonly overrides: readonly Override[];
  readonly seed: string;
  readonly last: PilePlan | null;
}

export interface AskRegret {
  readonly kind: 'regret';
  readonly pile: Pile;
  readonly plan: PilePlan;
  readonly choice: Override | { readonly keep: string };
}

export interface WeighLot {
  readonly kind: 'lot';
  /** With the models, parts and suppliers of the lot. */
  readonly pile: Pile;
  /** The plan without the lot. */
  readonly plan: Pick<PilePlan, 'items' | 'fits'>;
  readonly lot: readonly PileItem[];
  readonly states: number;
  readonly seed: string;
}

export interface CompareLots {
  readonly kind: 'compare';
  /** With the models, parts and suppliers of all of them. */
  readonly pile: Pile;
  readonly plan: WeighLot['plan'];
  readonly lots: readonly (readonly PileItem[])[];
}

/** What the plan earns more with a lot, and the work that it adds, nothing about it known beforehand. */
export type LotWorth = Pick<Grown, 'worthMinor' | 'minutes'>;

export interface MadePlan {
  /** Null where even the plan without the person's choices breaks a law. */
  readonly plan: PilePlan | null;
  /** Laws that were broken, as sentences: those of the plan with the choices where `plan` is without. */
  readonly broken: readonly string[];
  /** The plan keeps to the person's choices; false where that would break a law. */
  readonly keepsChoices: boolean;
  /** What the best plan that keeps to all choices earns less. */
  readonly regretMinor: number;
  readonly donors: readonly DonorWorth[];
  /** What an hour more, and so much more money, would add. */
  readonly hourMinor: number;
  readonly moneyMinor: number;
}

/** The further money that is looked at; one unit of it alone often buys nothing, as orders have postage. */
export const MORE_MONEY_MINOR = 1000;

/** Does one job. Throws `PlanningError` for a pile that makes no sense. */
export async function runPlanJob<J extends PlanJob>(job: J, solve?: SolveLinearProgram): Promise<AnswerOf<J>>;
export async function runPlanJob(job: PlanJob, solve?: SolveLinearProgram): Promise<AnswerOf<PlanJob>> {
  switch (job.kind) {
    case 'make':
      return make(job, solve);
    case 'regret':
      return regretOf(job);
    case 'lot':
      return lotStates(baseFrom(job.pile, job.plan), job.lot, job.seed, job.states);
    case 'compare':
      return worthsOf(job);
  }
}

/** By kind of job, what comes out. */
export type AnswerOf<J extends PlanJob> = J extends MakePlan
  ? MadePlan
  : J extends WeighLot
    ? readonly LotState[]
    : J extends CompareLots
      ? readonly LotWorth[]
      : number;

async function make({ pile, overrides, seed, last }: MakePlan, solve?: SolveLinearProgram): Promise<MadePlan> {
  const planned = await planPile(pile, { seed, ...(solve ? { solve } : {}), ...(last ? { last } : {}) });
  const base = baseOf(planned);
  const chosen = overrides.length > 0 ? withChoices(planned, base, overrides, seed) : { plan: planned.plan, regretMinor: 0 };
  const broken = brokenLaws(pile, chosen.plan);
  const isSound = broken.length === 0 || (overrides.length > 0 && brokenLaws(pile, planned.plan).length === 0);
  return {
    plan: !isSound ? null : broken.length === 0 ? chosen.plan : planned.plan,
    broken,
    keepsChoices: broken.length === 0,
    regretMinor: chosen.regretMinor,
    donors: donorWorths(base).filter(({ worthMinor }) => worthMinor > 0),
    hourMinor: Math.max(0, worthOfLimits(base, { minutes: pile.limits.minutes + 60 })),
    moneyMinor: Math.max(0, worthOfLimits(base, { moneyMinor: pile.limits.moneyMinor + MORE_MONEY_MINOR })),
  };
}

function withChoices({ problem, plan }: Planned, base: Base, overrides: readonly Override[], seed: string) {
  const { regretMinor, choice } = overridden(base, overrides);
  const prices = { minuteMinor: plan.prices.hourMinor / 60, money: plan.prices.money };
  return { regretMinor, plan: describePlan(problem, choice, seed, prices, plan.boundMinor) };
}

/** A plan as a place to ask from. */
export function baseFrom(pile: Pile, plan: WeighLot['plan']): Base {
  const problem = problemOf(pile);
  return baseOf({ problem, choice: choiceFrom(problem, plan) });
}

function worthsOf({ pile, plan, lots }: CompareLots): LotWorth[] {
  const base = baseFrom(pile, plan);
  return lots.map((lot) => {
    const { worthMinor, minutes } = worthOfMore(base, lot);
    return { worthMinor, minutes };
  });
}

/** What a choice of the person's would cost: how much less the best plan earns that keeps to it. */
function regretOf({ pile, plan, choice }: AskRegret): number {
  const base = baseFrom(pile, plan);
  if (!('keep' in choice)) return overridden(base, [choice]).regretMinor;
  const items = pile.items.map((item) => (item.id === choice.keep ? { ...item, keep: true } : item));
  return Math.max(0, base.scoreMinor - baseFrom({ ...pile, items }, plan).scoreMinor);
}
