import { readFile, stat } from 'node:fs/promises';

/** The largest text of a model that is read: its file, its readings, its netlist, its placement. */
export const MOST_BYTES = 2 * 2 ** 20;

export type TextRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly code: 'model-too-large' | 'model-unreadable'; readonly why: string };

/** A file as UTF-8 text, or why it is not: `why` is the code of the system, such as ENOENT, or a clause. */
export async function readText(path: string): Promise<TextRead> {
  try {
    if ((await stat(path)).size > MOST_BYTES) return { ok: false, code: 'model-too-large', why: 'too large' };
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path)) };
  } catch (error) {
    return { ok: false, code: 'model-unreadable', why: error instanceof TypeError ? 'it is not UTF-8 text' : codeOf(error) };
  }
}

/** The code that the system gives an error, such as ENOENT. */
export const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason');
