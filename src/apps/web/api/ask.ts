import { ProblemError, problemOf } from './problem-error.ts';

/** The parsed JSON of an answer of the bench. Throws `ProblemError` when it refuses, or cannot be reached. */
export async function ask<T>(path: string, init?: RequestInit): Promise<T> {
  const response = await reach(path, init);
  if (!response.ok) throw await problemOf(response);
  return (await response.json()) as T;
}

/** As `ask`, with a JSON body by POST. */
export const askWith = <T>(path: string, body: unknown, signal?: AbortSignal): Promise<T> =>
  ask<T>(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body), signal: signal ?? null });

async function reach(path: string, init?: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    throw new ProblemError(
      'unreachable',
      'The bench does not answer. Check that it is running and that this device is on its network, then try again.',
    );
  }
}
