import type { Bench } from '../../bench/bench.ts';

/** How long the log has to be quiet before the pile is planned anew. */
const QUIET_MS = 3000;

/** Plans the pile in the background whenever the log has grown and is quiet again. `isOver` ends it. */
export function planAhead(bench: Bench, isOver: () => boolean): void {
  let [seen, planned] = [-1, -1];
  const timer = setInterval(() => {
    if (isOver()) return clearInterval(timer);
    const { seq } = bench.state();
    if (seq === seen && seq !== planned) {
      planned = seq;
      bench.plan();
    }
    seen = seq;
  }, QUIET_MS);
  timer.unref();
}
