/** One example of the page: what is asked, and what must be in the answer. */
export interface Example {
  readonly line: number;
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
  readonly status: number;
  readonly answer: unknown;
}

const REQUEST = /^```http example\n([A-Z]+) (\S+)\n(?:\n([\s\S]*?)\n)?```$/gm;
const ANSWER = /```json answer=(\d{3})\n([\s\S]*?)\n```/y;

/**
 * The examples of a page of Markdown, in order: a fenced block marked `http example` with a request line and perhaps a
 * JSON body, and next to it a block marked `json answer=STATUS`. Throws where a request has no answer.
 */
export function examplesOf(page: string): Example[] {
  return [...page.matchAll(REQUEST)].map((request) => {
    const end = request.index + request[0].length;
    ANSWER.lastIndex = end + /^\s*/.exec(page.slice(end))![0].length;
    const answer = ANSWER.exec(page);
    const line = page.slice(0, request.index).split('\n').length;
    if (!answer) throw new Error(`the example on line ${line} has no answer next to it`);
    const body = request[3] === undefined ? undefined : (JSON.parse(request[3]) as unknown);
    return { line, method: request[1]!, path: request[2]!, body, status: Number(answer[1]), answer: JSON.parse(answer[2]!) as unknown };
  });
}

/**
 * Where an answer differs from what the page shows, as a path and both values; empty when it does not. An object may
 * hold more than is shown; "…" stands for anything, and as the last of a list for more of it.
 */
export function differences(shown: unknown, got: unknown, path = 'answer'): string[] {
  if (shown === '…') return got === undefined ? [`${path} is missing`] : [];
  if (Array.isArray(shown)) return listDifferences(shown, got, path);
  if (shown !== null && typeof shown === 'object') {
    if (got === null || typeof got !== 'object') return [`${path} is ${JSON.stringify(got)}, not an object`];
    return Object.entries(shown).flatMap(([key, value]) => differences(value, (got as Record<string, unknown>)[key], `${path}.${key}`));
  }
  return Object.is(shown, got) ? [] : [`${path} is ${JSON.stringify(got)}, shown is ${JSON.stringify(shown)}`];
}

function listDifferences(shown: readonly unknown[], got: unknown, path: string): string[] {
  if (!Array.isArray(got)) return [`${path} is ${JSON.stringify(got)}, not a list`];
  const isOpen = shown.at(-1) === '…';
  const items = isOpen ? shown.slice(0, -1) : shown;
  if (isOpen ? got.length < items.length : got.length !== items.length) return [`${path} holds ${got.length}, shown are ${items.length}`];
  return items.flatMap((item, i) => differences(item, got[i], `${path}[${i}]`));
}
