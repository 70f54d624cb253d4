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
  const [adding, again]: [Timed[], Timed[]] = [[], []];
  for (let i = 0; i < PILES; i++) {
    const pile = randomPile({ units: UNITS, seed: `warm ${i}` });
    const planned = await planPile(pile, { seed: 'warm', solve: solver.solve });
    const base = baseOf(planned);
    const further = randomPile({ units: ADDED, seed: `further ${i}` }).items.map((item) => ({ ...item, id: `further ${item.id}` }));
    for (const item of further) {
      adding.push(await timed(() => worthOfMore(base, [item])));
    }
    for (const changed of eventsIn(pile)) {
      again.push(await timed(() => planPile(changed, { seed: 'warm', solve: solver.solve, last: planned.plan })));
    }
  }
  await solver.close();
  return [
    {
      figure: 'plan.add_unit_p95_ms',
      value: round(
        quantile(
          adding.map(({ wallMs }) => wallMs),
          0.95,
        ),
      ),
      unit: 'ms',
      target: '≤ 100',
      reference: `worth of one unit more to ${UNITS}, ${adding.length} units, ${spread(adding)}`,
    },
    {
      figure: 'plan.replan_ms',
      value: round(
        quantile(
          again.map(({ wallMs }) => wallMs),
          0.5,
        ),
      ),
      unit: 'ms',
      target: '≤ 1000',
      reference: `median of ${again.length} full plans of ${UNITS} units after an event, bound and everything said included, ${spread(again)}`,
    },
  ];
}

interface Timed {
  readonly wallMs: number;
  /** Processor time of all threads. */
  readonly cpuMs: number;
}

async function timed(work: () => unknown): Promise<Timed> {
  const [started, used] = [performance.now(), process.cpuUsage()];
  await work();
  const { user, system } = process.cpuUsage(used);
  return { wallMs: performance.now() - started, cpuMs: (user + system) / 1000 };
}

function spread(runs: readonly Timed[]): string {
  const wall = runs.map(({ wallMs }) => wallMs);
  const cpu = runs.map(({ cpuMs }) => cpuMs);
  return `median ${round(quantile(wall, 0.5))} ms, slowest ${round(Math.max(...wall))} ms; processor time median ${round(quantile(cpu, 0.5))} ms, 95 % ${round(quantile(cpu, 0.95))} ms`;
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
