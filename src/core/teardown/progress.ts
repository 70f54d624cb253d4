/** One step that was ticked, and how long it took. */
export interface Tick {
  readonly step: string;
  readonly minutes: number;
}

export interface Progress {
  /** The step to do now; null when all are done. */
  readonly next: string | null;
  readonly done: number;
  readonly of: number;
  readonly minutesSpent: number;
  /** Of the steps that are left, as they are expected to take. */
  readonly minutesLeft: number;
  /** Ticked, but not in the plan: the person went another way, so it should be planned anew from here. */
  readonly unplanned: readonly string[];
}

/** Where a person stands in a planned order, whatever order the ticks came in. A step ticked twice counts once, with the time of both. */
export function progressOf(order: readonly { readonly id: string; readonly minutes: number }[], ticks: readonly Tick[]): Progress {
  const ticked = new Set(ticks.map(({ step }) => step));
  const planned = new Set(order.map(({ id }) => id));
  const left = order.filter(({ id }) => !ticked.has(id));
  return {
    next: left[0]?.id ?? null,
    done: order.length - left.length,
    of: order.length,
    minutesSpent: ticks.reduce((sum, { minutes }) => sum + minutes, 0),
    minutesLeft: left.reduce((sum, { minutes }) => sum + minutes, 0),
    unplanned: [...ticked].filter((id) => !planned.has(id)),
  };
}
