import type { Bench } from '../../bench/bench.ts';
import type { AppParts } from './app-parts.ts';
import { thinkAhead } from './think-ahead.ts';

/** How long the log has to be quiet before the pile is planned anew. */
const QUIET_MS = 3000;

/** Plans the pile in the background whenever the log has grown and is quiet again, after its units were thought over one by one. `isOver` ends it. */
export function planAhead(bench: Bench, isOver: () => boolean, log: AppParts['log'], quietMs = QUIET_MS): void {
  let [seen, planned] = [-1, -1];
  const timer = setInterval(() => {
    if (isOver()) return clearInterval(timer);
    const { seq } = bench.state();
    if (seq === seen && seq !== planned) {
      planned = seq;
      thinkAhead(bench, isOver)
        .then(() => void (isOver() || bench.plan()))
        .catch((error: unknown) => log('The pile could not be planned ahead of questions.', error));
    }
    seen = seq;
  }, quietMs);
  timer.unref();
}
