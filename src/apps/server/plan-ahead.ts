import type { AppParts } from './app-parts.ts';
import { thinkAhead } from './think-ahead.ts';

/** How long the log has to be quiet before the pile is planned anew. */
const QUIET_MS = 3000;

/** Plans the pile in the background whenever the log has grown and is quiet again, after its units were thought over one by one. `isOver` ends it. */
export function planAhead(parts: Pick<AppParts, 'bench' | 'door' | 'log'>, isOver: () => boolean, quietMs = QUIET_MS): void {
  const { bench, log } = parts;
  let [seen, planned] = [-1, -1];
  const timer = setInterval(() => {
    if (isOver()) return clearInterval(timer);
    const { seq } = bench.state();
    if (seq === seen && seq !== planned) {
      planned = seq;
      thinkAhead(parts, isOver)
        .then(() => void (isOver() || bench.plan()))
        .catch((error: unknown) => log('The pile could not be planned ahead of questions.', error));
    }
    seen = seq;
  }, quietMs);
  timer.unref();
}
