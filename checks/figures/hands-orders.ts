import { effortOf, EXACT_STEPS, planSteps, USUAL_WEIGHTS } from '../../src/core/teardown/index.ts';
import { cheapestByTrying } from '../../src/core/teardown/testing/cheapest-by-trying.ts';
import { randomSteps } from '../../src/core/teardown/testing/random-steps.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

const SMALL = 600;
const LARGE = 300;
const SAME = 1e-9;

/** Planned orders against every order on small graphs, and what large ones take. */
export function orderFigures(progress: Progress): Figure[] {
  progress('Trying every order of small graphs …');
  let best = 0;
  for (let seed = 0; seed < SMALL; seed++) {
    const { steps, goal } = randomSteps(`measured ${seed}`, 4 + (seed % 6));
    const plan = planSteps(steps, goal);
    if (plan.ok && Math.abs(plan.effort.cost - cheapestByTrying(steps, goal, USUAL_WEIGHTS)) < SAME) best++;
  }
  progress('Planning large graphs …');
  const large = Array.from({ length: LARGE }, (_, seed) => planned(seed, EXACT_STEPS));
  const beyond = Array.from({ length: LARGE }, (_, seed) => planned(seed, 60));
  const gaps = beyond.map(({ gap }) => gap);
  const times = large.map(({ ms }) => ms);
  return [
    {
      figure: 'hands.order_best',
      value: round(best / SMALL),
      unit: '',
      target: '= 1',
      reference: `${SMALL} random graphs of 4 to 9 steps with alternatives, tools and sides, against every order of every set of steps that reaches the goal`,
    },
    {
      figure: 'hands.order_exact_25',
      value: round(large.filter(({ exact }) => exact).length / LARGE),
      unit: '',
      target: '= 1',
      reference: `${LARGE} random graphs of ${EXACT_STEPS} steps, all of them wanted in a third; slowest ${round(Math.max(...times))} ms, median ${round(quantile(times, 0.5))} ms`,
    },
    {
      figure: 'hands.order_gap_60',
      value: round(quantile(gaps, 0.5)),
      unit: '',
      target: 'shown',
      reference: `share of the cost that the bound leaves open, median of ${LARGE} random graphs of 60 steps; nine in ten below ${round(quantile(gaps, 0.9))}`,
    },
  ];
}

function planned(seed: number, count: number): { readonly exact: boolean; readonly gap: number; readonly ms: number } {
  const { steps, goal } = randomSteps(`large ${seed}`, count);
  const wanted = seed % 3 === 0 ? steps.map(({ id }) => id) : goal;
  const start = performance.now();
  const plan = planSteps(steps, wanted);
  const ms = performance.now() - start;
  if (!plan.ok) throw new Error(`no way in graph ${seed}`);
  const cost = effortOf(plan.order, USUAL_WEIGHTS).cost;
  return { exact: plan.exact, gap: cost === 0 ? 0 : (cost - plan.bound) / cost, ms };
}
