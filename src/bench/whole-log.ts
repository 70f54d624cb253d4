import type { Bench } from './bench.ts';
import type { AnyEvent } from './events/index.ts';

const PAGE = 5000;

/** Every event of a bench, in the order of its log. */
export function wholeLog(bench: Pick<Bench, 'log'>): AnyEvent[] {
  const events: AnyEvent[] = [];
  let page = bench.log(0, PAGE);
  while (page.length > 0) {
    for (const { event } of page) events.push(event);
    page = bench.log(page.at(-1)!.seq, PAGE);
  }
  return events;
}
