import type { MiddlewareHandler } from 'hono';
import { routePath } from 'hono/route';

/** Upper edges of the histogram of answers, in seconds. */
const EDGES_S = [0.01, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10] as const;

interface Kind {
  count: number;
  seconds: number;
  readonly within: number[];
}

export interface SlowAnswer {
  readonly route: string;
  readonly at: string;
  readonly seconds: number;
}

/** How many answers are remembered as the slowest. */
const NOTED = 20;

/** How many requests were answered, how, and in what time; by method and kind of status only, so that nothing of anybody is in it. */
export interface Counters {
  readonly count: MiddlewareHandler;
  /** The answers that took longest, by the pattern of their address, the longest first. */
  slowest(): readonly SlowAnswer[];
  /** In the text format of OpenMetrics 1.0 (openmetrics.io), without its end. */
  text(): string;
}

export function requestCounters(now: () => Date): Counters {
  let slow: SlowAnswer[] = [];
  const remember = (answer: SlowAnswer): void => {
    if (slow.length === NOTED && answer.seconds <= slow.at(-1)!.seconds) return;
    slow = [...slow, answer].toSorted((a, b) => b.seconds - a.seconds).slice(0, NOTED);
  };
  const kinds = new Map<string, Kind>();
  const add = (name: string, seconds: number): void => {
    const kind = kinds.get(name) ?? { count: 0, seconds: 0, within: EDGES_S.map(() => 0) };
    kinds.set(name, kind);
    kind.count++;
    kind.seconds += seconds;
    EDGES_S.forEach((edge, i) => seconds <= edge && kind.within[i]!++);
  };
  return {
    async count(c, next) {
      const start = performance.now();
      await next();
      const seconds = (performance.now() - start) / 1000;
      add(`method="${methodOf(c.req.method)}",status="${Math.floor(c.res.status / 100)}xx"`, seconds);
      remember({ route: `${methodOf(c.req.method)} ${routePath(c, -1)}`, at: now().toISOString(), seconds });
    },
    slowest: () => slow,
    text: () =>
      [
        '# TYPE salvor_request_seconds histogram',
        '# UNIT salvor_request_seconds seconds',
        '# HELP salvor_request_seconds Time to the beginning of an answer.',
        ...[...kinds].flatMap(([labels, kind]) => linesOf(labels, kind)),
      ].join('\n'),
  };
}

function linesOf(labels: string, { count, seconds, within }: Kind): string[] {
  const buckets = EDGES_S.map((edge, i) => `salvor_request_seconds_bucket{${labels},le="${edge}"} ${within[i]}`);
  return [
    ...buckets,
    `salvor_request_seconds_bucket{${labels},le="+Inf"} ${count}`,
    `salvor_request_seconds_count{${labels}} ${count}`,
    `salvor_request_seconds_sum{${labels}} ${seconds}`,
  ];
}

/** A name that a stranger makes up does not become a line of its own. */
const METHODS: ReadonlySet<string> = new Set(['GET', 'HEAD', 'POST']);
const methodOf = (method: string): string => (METHODS.has(method) ? method : 'other');
