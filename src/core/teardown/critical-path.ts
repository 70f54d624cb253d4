import { TeardownError } from './teardown-error.ts';

/** Something that takes time, and what must be over before it begins: work of the hands, or a wait (drying, charging). */
export interface Activity {
  readonly id: string;
  readonly after: readonly string[];
  readonly minutes: number;
}

export interface Timed {
  readonly id: string;
  readonly earliestStart: number;
  readonly latestStart: number;
  /** How long it may be late without making the whole late. */
  readonly slack: number;
}

export interface CriticalPath {
  /** The least time for all of it, when whatever can go on side by side does. */
  readonly minutes: number;
  readonly activities: readonly Timed[];
  /** One longest chain, in order. */
  readonly path: readonly string[];
}

/** Slack below this is a rounding. */
const NOTHING = 1e-9;

/**
 * The critical path method (Kelley and Walker, 1959): earliest starts forward, latest starts backward. Throws
 * `TeardownError` on an unknown name or a ring.
 */
export function criticalPath(activities: readonly Activity[]): CriticalPath {
  const order = inOrder(activities);
  const end = new Map<string, number>();
  const startOf = ({ after }: Activity): number => Math.max(0, ...after.map((id) => end.get(id)!));
  for (const activity of order) end.set(activity.id, startOf(activity) + activity.minutes);
  const minutes = Math.max(0, ...end.values());
  const latest = new Map<string, number>();
  for (const { id, minutes: own } of order.toReversed()) {
    const followers = activities.filter(({ after }) => after.includes(id));
    latest.set(id, Math.min(minutes, ...followers.map((next) => latest.get(next.id)!)) - own);
  }
  const timed = activities.map((activity) => {
    const [earliestStart, latestStart] = [startOf(activity), latest.get(activity.id)!];
    return { id: activity.id, earliestStart, latestStart, slack: latestStart - earliestStart };
  });
  return { minutes, activities: timed, path: chain(order, timed) };
}

/** From the start on, always to an activity without slack that begins when the last one ends. */
function chain(order: readonly Activity[], timed: readonly Timed[]): string[] {
  const slack = new Map(timed.map(({ id, slack: own }) => [id, own]));
  const path: string[] = [];
  let now = 0;
  for (const { id, after, minutes } of order) {
    const start = timed.find((each) => each.id === id)!.earliestStart;
    const follows = path.length === 0 ? after.length === 0 : after.includes(path.at(-1)!);
    if (!follows || slack.get(id)! > NOTHING || Math.abs(start - now) > NOTHING) continue;
    path.push(id);
    now = start + minutes;
  }
  return path;
}

function inOrder(activities: readonly Activity[]): Activity[] {
  const known = new Set(activities.map(({ id }) => id));
  const unknown = activities.flatMap(({ after }) => after).find((id) => !known.has(id));
  if (unknown !== undefined) throw new TeardownError('unknown-step', `"${unknown}" is no activity`);
  const order: Activity[] = [];
  const done = new Set<string>();
  while (order.length < activities.length) {
    const ready = activities.filter(({ id, after }) => !done.has(id) && after.every((before) => done.has(before)));
    if (ready.length === 0) throw new TeardownError('cycle', 'some activities wait for each other in a ring');
    for (const activity of ready) {
      order.push(activity);
      done.add(activity.id);
    }
  }
  return order;
}

/** A time as three guesses: if all goes well, as it usually goes, if all goes ill. */
export interface Guess {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/** Mean and variance of a guessed time: (a + 4m + b) / 6 and ((b − a) / 6)² (Malcolm, Roseboom, Clark and Fazar, 1959). */
export const guessedTime = ({ least, likely, most }: Guess): { readonly mean: number; readonly variance: number } => ({
  mean: (least + 4 * likely + most) / 6,
  variance: ((most - least) / 6) ** 2,
});
