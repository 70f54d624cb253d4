import { baseOf, planPile, worthOfMore, type Pile, type PileItem } from '../../src/core/planning/index.ts';
import { openLinearSolver } from '../../src/edges/solver/index.ts';
import { randomPile } from '../planning/random-pile.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

const UNITS = 50;
const PILES = 4;
const ADDED = 40;

/** How long a warm process takes for one unit more, and for a plan after an event. */
export async function warmFigures(progress: Progress): Promise<Figure[]> {
  progress('adding units and planning again, warm');
  const solver = openLinearSolver();
  const adding: number[] = [];
  const again: number[] = [];
  for (let i = 0; i < PILES; i++) {
    const pile = randomPile({ units: UNITS, seed: `warm ${i}` });
    const planned = await planPile(pile, { seed: 'warm', solve: solver.solve });
    const base = baseOf(planned);
    const further = randomPile({ units: ADDED, seed: `further ${i}` }).items.map((item) => ({ ...item, id: `further ${item.id}` }));
    for (const item of further) {
      const started = performance.now();
      worthOfMore(base, [item]);
      adding.push(performance.now() - started);
    }
    for (const changed of eventsIn(pile)) {
      const started = performance.now();
      await planPile(changed, { seed: 'warm', solve: solver.solve, last: planned.plan });
      again.push(performance.now() - started);
    }
  }
  await solver.close();
  return [
    {
      figure: 'plan.add_unit_p95_ms',
      value: round(quantile(adding, 0.95)),
      unit: 'ms',
      target: '≤ 100',
      reference: `worth of one unit more to ${UNITS}, ${adding.length} units, median ${round(quantile(adding, 0.5))} ms`,
    },
    {
      figure: 'plan.replan_ms',
      value: round(quantile(again, 0.5)),
      unit: 'ms',
      target: '≤ 1000',
      reference: `median of ${again.length} full plans of ${UNITS} units after an event, bound and everything said included, slowest ${round(Math.max(...again))} ms`,
    },
  ];
}

/** The pile after one event each: an assembly turns out dead, or to work. */
function eventsIn(pile: Pile): Pile[] {
  return [0, 7, 19].map((at, i) => ({
    ...pile,
    items: pile.items.map((item, j) => (j === at ? found(item, i === 0 ? 'dead' : 'works') : item)),
  }));
}

const found = (item: PileItem, fault: string): PileItem => ({
  ...item,
  assemblies: item.assemblies.map((assembly, s) => (s === 0 ? { ...assembly, faults: { [fault]: 1 } } : assembly)),
});
