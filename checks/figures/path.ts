import { randomStream } from '../../src/core/numeric/index.ts';
import type { Figure, Progress } from './figure.ts';
import { round } from './figure.ts';
import { interactiveSeconds, readySeconds } from './path-start.ts';
import { listP95 } from './path-list.ts';
import { foldSeconds } from './path-fold.ts';
import { appendRates } from './path-append.ts';
import { lostEvents } from './path-lost.ts';

/** The figures of the whole path: start, first page, lists, fold, durable writing, and what a kill loses. */
export async function measure(progress: Progress): Promise<Figure[]> {
  const random = randomStream('figures of the path');
  progress('Starting the server five times …');
  const ready = await readySeconds(5);
  progress('Opening the first page in a cold browser five times …');
  const interactive = await interactiveSeconds(5);
  progress('Listing and searching 100,000 items …');
  const list = listP95(100_000, random);
  progress('Folding 100,000 events …');
  const fold = foldSeconds(100_000, random);
  progress('Appending events durably …');
  const rates = appendRates();
  progress('Killing the server in the middle of 1,000 events, several times …');
  const lost = await lostEvents(5);
  return [
    { figure: 'path.ready_s', value: round(ready), unit: 's', target: '≤ 1', reference: 'median of 5 starts on the demo bench' },
    {
      figure: 'path.interactive_s',
      value: round(interactive),
      unit: 's',
      target: '≤ 1',
      reference: 'median of 5 cold browser profiles, demo bench, loopback',
    },
    {
      figure: 'path.list_p95_ms',
      value: round(list.p95Ms),
      unit: 'ms',
      target: '≤ 5',
      reference: `${list.queries} pages and searches over 100,000 items, median ${round(list.medianMs)} ms`,
    },
    {
      figure: 'path.fold_s',
      value: round(fold),
      unit: 's',
      target: '≤ 1',
      reference: 'state from 100,000 stored events of mixed kinds, reading included',
    },
    {
      figure: 'path.events_per_s',
      value: round(rates.singlePerS),
      unit: '1/s',
      target: 'shown',
      reference: `single; in gestures of 20: ${round(rates.batchedPerS)}/s; raw SQLite inserts in the same run: ${round(rates.rawSinglePerS)}/s single, ${round(rates.rawBatchedPerS)}/s in 20s`,
    },
    {
      figure: 'path.lost_events',
      value: lost.lost,
      unit: '',
      target: '= 0',
      reference: `${lost.acknowledged} acknowledged by ${lost.rounds} killed servers, two clients`,
    },
  ];
}
