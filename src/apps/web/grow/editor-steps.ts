import type { EditorPart } from './editor-part.ts';
import type { Change, Editor } from './editor.ts';
import { toBody } from './marked-part.ts';

/** Which step was done or taken back between two states of the editor that follow each other. */
export function stepBetween(before: Editor, after: Editor): { readonly done?: Change; readonly takenBack?: Change } {
  const [last, next] = [before.past.at(-1), after.past.at(-1)];
  if (after.past.length > before.past.length) return { done: next! };
  return after.past.length < before.past.length ? { takenBack: last! } : {};
}

/** Whether what is shown is what is stored, by what the log keeps of each part. */
export function areSame(parts: readonly EditorPart[], shown: Editor['parts']): boolean {
  const kept = (part: EditorPart): string => JSON.stringify(toBody(part));
  return parts.length === shown.size && parts.every((part) => shown.has(part.ref) && kept(shown.get(part.ref)!) === kept(part));
}
