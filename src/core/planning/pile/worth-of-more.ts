import { randomStream } from '../../numeric/index.ts';
import { copyOf, idleChoice, type Choice } from './choice.ts';
import { climb, openWell } from './climb.ts';
import type { Limits, PileItem } from './pile.ts';
import { problemOf, type Problem } from './problem.ts';
import { softenedWorth } from './model-worth.ts';
import { earnedAMinute, trueAim } from './search.ts';
import { Standing } from './standing.ts';

/** In each round of a climb so many swaps of opened units for others are looked at. */
const SWAPS = 8;
const SOFT = 0.25;

/** A plan to which more is added in thought: its choice, climbed as far as the same search goes that follows each addition. */
export interface Base {
  readonly problem: Problem;
  readonly choice: Choice;
  readonly scoreMinor: number;
  /** What a minute too many loses. */
  readonly shortMinuteMinor: number;
}

export function baseOf({ problem, choice }: { readonly problem: Problem; readonly choice: Choice }): Base {
  const shortMinuteMinor = earnedAMinute(new Standing(problem, copyOf(choice), trueAim(problem, 0)));
  const standing = climbed(
    problem,
    copyOf(choice),
    shortMinuteMinor,
    problem.models.map((_, m) => m),
  );
  return { problem, choice: standing.choice, scoreMinor: standing.score(), shortMinuteMinor };
}

export interface Grown {
  readonly worthMinor: number;
  readonly problem: Problem;
  readonly choice: Choice;
  /** Further minutes that are expected to be worked. */
  readonly minutes: number;
}

/**
 * What the plan earns more with further items: the pile with them is searched from the plan as it stands, on the exact
 * expectation, in the models concerned and then in the others.
 */
export function worthOfMore(base: Base, items: readonly PileItem[]): Grown {
  const { pile } = base.problem;
  const problem = problemOf({ ...pile, items: [...pile.items, ...items] });
  const choice = idleChoice(problem);
  choice.open.set(base.choice.open);
  choice.option.set(base.choice.option);
  choice.fill.set(base.choice.fill);
  const models = new Set(items.map(({ model }) => model));
  const standing = climbed(
    problem,
    choice,
    base.shortMinuteMinor,
    problem.models.flatMap(({ id }, m) => (models.has(id) ? [m] : [])),
  );
  const before = new Standing(base.problem, base.choice, standing.aim);
  return {
    worthMinor: standing.score() - base.scoreMinor,
    problem,
    choice: standing.choice,
    minutes: expectedMinutes(standing) - expectedMinutes(before),
  };
}

/** What the plan earns more within other limits. */
export function worthOfLimits(base: Base, limits: Partial<Limits>): number {
  const { problem } = base;
  const other = { ...problem, pile: { ...problem.pile, limits: { ...problem.pile.limits, ...limits } } };
  return (
    climbed(
      other,
      copyOf(base.choice),
      base.shortMinuteMinor,
      problem.models.map((_, m) => m),
    ).score() - base.scoreMinor
  );
}

export interface DonorWorth {
  readonly model: string;
  readonly slot: string;
  readonly worthMinor: number;
}

/** What one more working assembly in the drawer adds, for every slot of every model of which there are units; most first. */
export function donorWorths(base: Base): DonorWorth[] {
  const { pile, models } = base.problem;
  return pile.models
    .flatMap((model, m) =>
      models[m]!.units.length === 0
        ? []
        : model.slots.map(({ id: slot }) => {
            const item: PileItem = {
              id: `one more ${slot} of ${model.id}`,
              model: model.id,
              assemblies: [{ slot, faults: { works: 1 }, remedies: [] }],
            };
            return { model: model.id, slot, worthMinor: worthOfMore(base, [item]).worthMinor };
          }),
    )
    .sort((a, b) => b.worthMinor - a.worthMinor);
}

/**
 * Climbs in these models first and then everywhere: once from the choice as it is, opening what is closed and pays, and once with softened
 * chances at first, which sees what only pays together; the better of the two goes on in all.
 */
function climbed(problem: Problem, choice: Choice, shortMinuteMinor: number, first: readonly number[]): Standing {
  const aim = trueAim(problem, shortMinuteMinor);
  const all = problem.models.map((_, m) => m);
  const [plain, soft] = [choice, copyOf(choice)].map((each) => new Standing(problem, each, aim)) as [Standing, Standing];
  for (const m of first) for (const u of problem.models[m]!.units) if (choice.open[u] !== 1) openWell(plain, [], u, plain.score());
  soft.aimAt({ ...aim, worthOf: softenedWorth(SOFT) });
  climb(soft, first, randomStream('softly'), () => false, 0);
  soft.aimAt(aim);
  for (const standing of [plain, soft]) climb(standing, first, randomStream('more'), () => false, SWAPS);
  const better = soft.score() > plain.score() ? soft : plain;
  climb(better, all, randomStream('further'), () => false, 0);
  return better;
}

function expectedMinutes(standing: Standing): number {
  return standing.problem.models.reduce((sum, { buildMinutes }, m) => sum + standing.worth(m).built * buildMinutes, standing.minutesNow());
}
