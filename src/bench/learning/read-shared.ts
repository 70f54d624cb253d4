import type { Body } from '../events/index.ts';
import type { LearnedBundle } from '../views/index.ts';

type TakenIn = Body<'learned-taken-in'>;

export type ReadShared =
  | { readonly ok: true; readonly body: TakenIn }
  /** `detail` is what is wrong with the file, as a clause. */
  | { readonly ok: false; readonly code: 'bad-bundle'; readonly detail: string };

/** Longer than the largest honest one. */
const MOST_LETTERS = 200_000;

const bad = (detail: string): ReadShared => ({ ok: false, code: 'bad-bundle', detail });

/**
 * A file of learned numbers as the event that takes them in. Looks only at what kind of file it is: each number is checked by the schema of the event
 * when that is recorded, like everything that comes from outside.
 */
export function readShared(text: string, from: string, weight: number): ReadShared {
  if (text.length > MOST_LETTERS) return bad(`it is longer than ${MOST_LETTERS} letters`);
  const value = parsed(text);
  if (!value || value.format !== 'salvor-learned') return bad('it is no file of learned numbers');
  if (value.version !== 1) return bad('it is of a later version of Salvor');
  if (!Array.isArray(value.numbers) || value.numbers.length === 0) return bad('it holds no number');
  if (typeof value.model_id !== 'string') return bad('it names no model');
  return { ok: true, body: { model_id: value.model_id, from, weight, numbers: value.numbers } };
}

/** Of a JSON object its fields, none of which need be there. */
function parsed(text: string): Partial<LearnedBundle> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? value : null;
  } catch {
    return null;
  }
}
