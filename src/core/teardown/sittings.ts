import { TeardownError } from './teardown-error.ts';

export interface Task {
  readonly id: string;
  readonly minutes: number;
  readonly after: readonly string[];
}

export type Sittings =
  | {
      readonly ok: true;
      readonly sittings: readonly (readonly string[])[];
      readonly minutes: readonly number[];
      /** Sum over the sittings of the square of the minutes that are left over. */
      readonly unevenness: number;
    }
  | { readonly ok: false; readonly code: 'task-too-long'; readonly id: string; readonly minutes: number };

/** Up to so many tasks the division is the best; the work grows as 3 to their number. */
export const EXACT_TASKS = 12;

/**
 * Work divided over sittings of so many minutes: the fewest sittings, and of those the most even, no task before what it
 * comes after. (The measure is that of line balancing: sum of squares of idle time.) Exact up to `EXACT_TASKS` tasks;
 * above, tasks are taken in the order given, which must be one in which they can be done.
 */
export function sittingsOf(tasks: readonly Task[], minutesEach: number): Sittings {
  if (!(minutesEach > 0)) throw new TeardownError('bad-number', `a sitting needs some minutes, got ${minutesEach}`);
  const long = tasks.find(({ minutes }) => minutes > minutesEach);
  if (long) return { ok: false, code: 'task-too-long', id: long.id, minutes: long.minutes };
  const groups = tasks.length <= EXACT_TASKS ? bestGroups(tasks, minutesEach) : groupsInOrder(tasks, minutesEach);
  const minutes = groups.map((group) => sum(group));
  return {
    ok: true,
    sittings: groups.map((group) => group.map(({ id }) => id)),
    minutes,
    unevenness: minutes.reduce((total, own) => total + (minutesEach - own) ** 2, 0),
  };
}

const sum = (tasks: readonly Task[]): number => tasks.reduce((total, { minutes }) => total + minutes, 0);

interface Partial {
  readonly count: number;
  readonly unevenness: number;
  readonly last: number;
}

const better = (a: Partial, b: Partial | undefined): boolean =>
  b === undefined || a.count < b.count || (a.count === b.count && a.unevenness < b.unevenness);

/** Dynamic programme over sets of done tasks: the last sitting is any set that fits and whose rest can stand before it. */
function bestGroups(tasks: readonly Task[], minutesEach: number): Task[][] {
  const full = (1 << tasks.length) - 1;
  const load = loads(tasks);
  const before = tasks.map(({ after }) => after.reduce((mask, id) => mask | bitOf(tasks, id), 0));
  const closed = Array.from({ length: full + 1 }, (_, done) => before.every((mask, i) => (done & (1 << i)) === 0 || (mask & ~done) === 0));
  if (!closed[full]) throw new TeardownError('cycle', 'a task comes after one that is not among them');
  const best: (Partial | undefined)[] = [{ count: 0, unevenness: 0, last: 0 }];
  for (let done = 1; done <= full; done++) {
    if (!closed[done]) continue;
    for (let last = done; last > 0; last = (last - 1) & done) {
      const rest = best[done & ~last];
      if (!rest || load[last]! > minutesEach) continue;
      const candidate = { count: rest.count + 1, unevenness: rest.unevenness + (minutesEach - load[last]!) ** 2, last };
      if (better(candidate, best[done])) best[done] = candidate;
    }
  }
  const groups: Task[][] = [];
  for (let done = full; done > 0; done &= ~best[done]!.last) groups.push(tasks.filter((_, i) => (best[done]!.last & (1 << i)) !== 0));
  return groups.toReversed();
}

const bitOf = (tasks: readonly Task[], id: string): number => {
  const i = tasks.findIndex((task) => task.id === id);
  if (i < 0) throw new TeardownError('unknown-step', `"${id}" is no task`);
  return 1 << i;
};

function loads(tasks: readonly Task[]): Float64Array {
  const load = new Float64Array(1 << tasks.length);
  for (let set = 1; set < load.length; set++) {
    const low = set & -set;
    load[set] = load[set ^ low]! + tasks[31 - Math.clz32(low)]!.minutes;
  }
  return load;
}

/** The best cuts of one order. */
function groupsInOrder(tasks: readonly Task[], minutesEach: number): Task[][] {
  const best: (Partial | undefined)[] = [{ count: 0, unevenness: 0, last: 0 }];
  for (let end = 1; end <= tasks.length; end++)
    for (let start = end - 1; start >= 0; start--) {
      const minutes = sum(tasks.slice(start, end));
      if (minutes > minutesEach) break;
      const rest = best[start]!;
      const candidate = { count: rest.count + 1, unevenness: rest.unevenness + (minutesEach - minutes) ** 2, last: start };
      if (better(candidate, best[end])) best[end] = candidate;
    }
  const groups: Task[][] = [];
  for (let end = tasks.length; end > 0; end = best[end]!.last) groups.push(tasks.slice(best[end]!.last, end));
  return groups.toReversed();
}
