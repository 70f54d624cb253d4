import {
  assertPlan,
  idleChoice,
  luckyProblem,
  meanOfAll,
  meanWorth,
  planAlone,
  planPile,
  readPrices,
  relaxationOf,
  searchPlan,
  simulate,
  type Choice,
  type LinearAnswer,
  type LinearProgram,
  type Planned,
  type Problem,
} from '../../src/core/planning/index.ts';
import { openLinearSolver, type LinearSolver } from '../../src/edges/solver/index.ts';
import { randomPile } from '../planning/random-pile.ts';
import { round, type Figure, type Progress } from './figure.ts';

/** Piles, outcomes of the bound, and outcomes known in advance, by size. */
const SIZES = [
  { units: 15, piles: 16, sampled: 100, whole: true, known: 6, bound: 0.975 },
  { units: 50, piles: 10, sampled: 100, whole: false, known: 3, bound: 0.99 },
  { units: 200, piles: 4, sampled: 60, whole: false, known: 0, bound: 0.993 },
  { units: 500, piles: 3, sampled: 40, whole: false, known: 0, bound: 0.996 },
] as const;
const FRESH = 8000;

interface Measured {
  readonly mean: number;
  readonly bound: number;
  readonly alone: number;
  readonly expected: number;
  readonly perfect: number;
}

/** How much plans earn on fresh draws, against a bound and against other ways to plan; on seeds that nothing was tuned on. */
export async function qualityFigures(progress: Progress): Promise<Figure[]> {
  const solver = openLinearSolver();
  const figures: Figure[] = [];
  for (const size of SIZES) {
    const measured: Measured[] = [];
    for (let i = 0; i < size.piles; i++) {
      progress(`planning pile ${i + 1} of ${size.piles} with ${size.units} units`);
      measured.push(await measurePile(solver, size, `measure ${size.units} ${i}`));
    }
    figures.push(...figuresOf(size, measured));
  }
  await solver.close();
  return figures;
}

async function measurePile(solver: LinearSolver, size: (typeof SIZES)[number], seed: string): Promise<Measured> {
  const pile = randomPile({ units: size.units, seed });
  const planned = await planPile(pile, { seed: 'study', solve: solver.solve });
  assertPlan(pile, planned.plan);
  const { problem, choice } = planned;
  const alone = planAlone(pile);
  return {
    mean: freshMean(problem, choice),
    bound: await boundOf(solver, problem, size.sampled, size.whole),
    alone: freshMean(alone.problem, alone.choice),
    expected: size.units === 15 ? await expectedPlan(solver, problem) : Number.NaN,
    perfect: perfectMean(planned, size.known),
  };
}

const freshMean = (problem: Problem, choice: Choice): number => meanOfAll(simulate(problem, choice, 'fresh draws', FRESH).profits);

async function boundOf(solver: LinearSolver, problem: Problem, outcomes: number, whole: boolean): Promise<number> {
  const relaxation = relaxationOf(problem, 'statistical bound', outcomes, { whole, apart: true });
  return solved(await solver.solve(relaxation.program)).objective * (whole ? 1 + WHOLE_GAP : 1) + relaxation.constant;
}

/** The solver stops when a whole program is proven this near to its optimum. */
const WHOLE_GAP = 1e-4;

function solved(answer: LinearAnswer): Extract<LinearAnswer, { ok: true }> {
  if (!answer.ok) throw new Error(`the relaxation was not solved: ${answer.code} ${answer.detail}`);
  return answer;
}

async function pricesOf(solver: LinearSolver, problem: Problem) {
  const relaxation = relaxationOf(problem, 'prices', 24);
  const program: LinearProgram = relaxation.program;
  return readPrices(relaxation, solved(await solver.solve(program)).prices);
}

/** What the plan earns that takes mean outcomes for sure, searched in the same way. */
async function expectedPlan(solver: LinearSolver, problem: Problem): Promise<number> {
  const prices = await pricesOf(solver, problem);
  const choice = searchPlan(problem, { seed: 'mean', prices, shouldStop: () => false, worthOf: meanWorth });
  return freshMean(problem, choice);
}

/** What is earned if it is known beforehand which remedy would help what, as share of nothing when not asked for. */
function perfectMean({ problem, choice, plan }: Planned, known: number): number {
  let [ratio, sum] = [0, 0];
  const own = simulate(problem, choice, 'known', known).profits;
  for (let k = 0; k < known; k++) {
    const lucky = luckyProblem(problem, 'known', k);
    const prices = { minuteMinor: plan.prices.hourMinor / 60, money: plan.prices.money };
    const best = searchPlan(lucky, { seed: 'known', prices, shouldStop: () => false, starts: [choice, idleChoice(problem)], again: true });
    sum += simulate(lucky, best, 'known', k + 1).profits[k]!;
    ratio += own[k]!;
  }
  return known > 0 ? ratio / sum : Number.NaN;
}

function figuresOf({ units, bound, sampled, whole, piles, known }: (typeof SIZES)[number], measured: readonly Measured[]): Figure[] {
  const total = (of: (m: Measured) => number): number => measured.reduce((sum, each) => sum + of(each), 0);
  const programs = whole ? `whole programs over ${sampled} outcomes` : `relaxations over ${sampled} outcomes, every doubtful thing apart`;
  const figures: Figure[] = [
    {
      figure: `plan.of_bound${units}`,
      value: round(total((m) => m.mean) / total((m) => m.bound), 4),
      unit: '',
      target: `≥ ${bound}`,
      reference: `simulated profit on ${FRESH} fresh draws, ${piles} piles, against the optimum of sampled ${programs}; worst pile ${round(Math.min(...measured.map((m) => m.mean / m.bound)), 4)}`,
    },
  ];
  if (units > 50) return figures;
  const target = units === 15 ? 1.16 : 1.23;
  figures.push(
    against(
      `plan.vs_alone${units}`,
      `≥ ${target}`,
      measured.map((m) => m.mean / m.alone),
      'each unit on its own if it pays, orders together, fresh draws',
    ),
  );
  if (units === 15)
    figures.push(
      against(
        'plan.vs_expected',
        '≥ 1.04',
        measured.map((m) => m.mean / m.expected),
        'planning with mean outcomes, the same search',
      ),
    );
  figures.push(
    against(
      `plan.vs_perfect${units}`,
      'shown',
      measured.map((m) => m.perfect),
      `what is earned when all outcomes of remedies are known beforehand, ${known} outcomes a pile, searched in the same way`,
    ),
  );
  return figures;
}

/** The mean of ratios with its 95 % interval over piles. */
function against(figure: string, target: string, ratios: readonly number[], what: string): Figure {
  const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
  const sd = Math.sqrt(ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / (ratios.length - 1));
  const half = (1.96 * sd) / Math.sqrt(ratios.length);
  return {
    figure,
    value: round(mean, 4),
    unit: '×',
    target,
    reference: `${what}; ${ratios.length} piles, 95 % interval ${round(mean - half, 4)} to ${round(mean + half, 4)}`,
  };
}
