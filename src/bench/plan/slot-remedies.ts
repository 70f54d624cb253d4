import { courseFor, WORKS, type Course, type Cure, type Remedy } from '../../core/planning/index.ts';
import { lookingFor, type Telling } from '../advice/knowing.ts';
import type { FaultClass } from './fault-classes.ts';
import { FIND_FIRST } from './plan-slots.ts';

/** A remedy as it would be done on this assembly: minutes with the way to get there and the trial after it. */
export interface Step {
  readonly cure: Cure;
  /** Parts that it takes, by name; their price is not in `cure.partsMinor` then. */
  readonly uses: Readonly<Record<string, number>>;
  /** What those parts cost by the way, where they are not ordered beforehand. */
  readonly boughtMinor: number;
}

/** What a wrong decision would be worth, to judge which steps come first. */
export interface Stakes {
  readonly workingMinor: number;
  readonly asIsMinor: number;
  readonly hourMinor: number;
}

/** Rows of trying longer than this are not looked at, nor single remedies beyond the most helpful ones. */
const LONGEST_ROW = 4;
const MOST_SINGLE = 4;
const LEAST_HELP = 0.005;

/**
 * The ways to treat one assembly, for the plan to choose from: rows of remedies tried one after another until it works, single remedies,
 * and finding the trouble first where checks can tell it. Each is one remedy of the plan with expected minutes and money; a step is only done,
 * and only harms, where the assembly does not work yet.
 */
export function slotRemedies(classes: readonly FaultClass[], steps: readonly Step[], stakes: Stakes, telling: Telling): Remedy[] {
  const helpful = steps.filter((step) => helps(classes, [], step) >= LEAST_HELP);
  const row = bestRow(classes, helpful, stakes);
  const rows = row.map((_, i) => row.slice(0, i + 1));
  const single = [...helpful]
    .sort((a, b) => helps(classes, [], b) - helps(classes, [], a))
    .slice(0, MOST_SINGLE)
    .map((step) => [step]);
  const tried = new Map([...rows, ...single].map((each) => [each.map(({ cure }) => cure.id).join('+'), each]));
  const remedies = [...tried].map(([id, each]) => rowRemedy(id, classes, each));
  const found = findFirst(classes, helpful, stakes, telling);
  return found ? [...remedies, found] : remedies;
}

/** Chance that all faults of a class are gone after the steps, none of which ruined it. */
function mended({ faults, unknown }: FaultClass, steps: readonly Step[]): number {
  if (unknown) return 0;
  let [gone, reach] = [0, 1];
  for (let i = 0; i < steps.length; i++) {
    const all = faults.reduce((chance, fault) => chance * (1 - left(fault, steps.slice(0, i + 1))), 1);
    const risk = steps[i]!.cure.risk;
    const now = Math.max(0, all - gone);
    gone += now * reach * (1 - risk);
    reach *= 1 - risk;
  }
  return Math.min(1, gone);
}

const left = (fault: string, steps: readonly Step[]): number =>
  steps.reduce((chance, { cure }) => chance * (1 - (cure.mends[fault] ?? 0)), 1);

const broken = (classes: readonly FaultClass[]): FaultClass[] => classes.filter(({ id }) => id !== WORKS);

/** Chance that the assembly does not work before the steps are over. */
const notYet = (classes: readonly FaultClass[], steps: readonly Step[]): number =>
  broken(classes).reduce((sum, each) => sum + each.chance * (1 - mended(each, steps)), 0);

/** By how much a further step raises the chance that it works. */
const helps = (classes: readonly FaultClass[], before: readonly Step[], step: Step): number =>
  notYet(classes, before) - notYet(classes, [...before, step]);

/** Greedy by chance for its cost, as far as it helps. */
function bestRow(classes: readonly FaultClass[], steps: readonly Step[], { hourMinor }: Stakes): Step[] {
  const row: Step[] = [];
  while (row.length < LONGEST_ROW) {
    const ratio = (step: Step): number =>
      helps(classes, row, step) / Math.max(1, (step.cure.minutes * hourMinor) / 60 + step.cure.partsMinor);
    const next = steps.filter((step) => !row.includes(step) && helps(classes, row, step) >= LEAST_HELP);
    if (next.length === 0) return row;
    row.push(next.reduce((best, step) => (ratio(step) > ratio(best) ? step : best)));
  }
  return row;
}

/** A row as one remedy of the plan. Its parts must be at hand for it to be done at all, so all of them are taken. */
function rowRemedy(id: string, classes: readonly FaultClass[], row: readonly Step[]): Remedy {
  let [minutes, squares, costMinor] = [0, 0, 0];
  const uses: Record<string, number> = {};
  row.forEach((step, i) => {
    const reach = notYet(classes, row.slice(0, i));
    minutes += reach * step.cure.minutes;
    squares += reach * (1 - reach) * step.cure.minutes ** 2;
    costMinor += reach * step.cure.partsMinor;
    for (const [part, n] of Object.entries(step.uses)) uses[part] = (uses[part] ?? 0) + n;
  });
  const mends = Object.fromEntries(broken(classes).map((each) => [each.id, mended(each, row)]));
  return { id, mends, harm: 0, costMinor, minutes, minutesSpread: Math.sqrt(squares), uses, gives: {} };
}

function courseOf(id: string, faults: readonly string[], cures: readonly Cure[], stakes: Stakes): Course {
  const none = courseFor(['not in the model'], [], stakes);
  if (id === WORKS) return { ...none, cures: ['nothing to do'] };
  return faults.length > 0 ? courseFor(faults, cures, stakes) : none;
}

/** Finding out what is wrong, then doing what is best for it; null where the checks at hand tell nothing, or nothing is left to tell. */
function findFirst(classes: readonly FaultClass[], steps: readonly Step[], stakes: Stakes, telling: Telling): Remedy | null {
  if (telling.bitsPerMinute <= 0 || steps.length === 0) return null;
  const cures = steps.map(({ cure, boughtMinor }) => ({ ...cure, partsMinor: cure.partsMinor + boughtMinor }));
  const courses = classes.map(({ id, chance, faults }) => ({ id, chance, course: courseOf(id, faults, cures, stakes) }));
  const { share, checkMinutes } = lookingFor(courses, telling);
  if (share <= 0 || checkMinutes <= 0) return null;
  const over = (of: (at: (typeof courses)[number]) => number): number => share * courses.reduce((sum, at) => sum + at.chance * of(at), 0);
  const work = over(({ course }) => course.minutes);
  const squares = over(({ course }) => course.minutes ** 2);
  return {
    id: FIND_FIRST,
    mends: Object.fromEntries(courses.filter(({ id }) => id !== WORKS).map(({ id, course }) => [id, share * course.chance])),
    harm: 0,
    costMinor: over(({ course }) => course.spendMinor),
    minutes: checkMinutes + work,
    minutesSpread: Math.sqrt(Math.max(0, squares - work ** 2)),
    uses: {},
    gives: {},
  };
}
