import type { ComparisonShelf, KeptComparison } from '../comparer.ts';

/** Comparisons in memory, numbered by what they are of. */
export function memoryShelf(): ComparisonShelf {
  const kept = new Map<string, { readonly note: string; readonly laid: Uint8Array }>();
  const names = new Map<string, string>();
  return {
    keyOf: (text) => {
      const known = names.get(text) ?? names.size.toString(16).padStart(64, '0');
      names.set(text, known);
      return known;
    },
    get: async (key) => {
      const found = kept.get(key);
      return found ? (JSON.parse(found.note) as KeptComparison) : null;
    },
    laid: async (key) => kept.get(key)?.laid ?? null,
    put: async (key, note, laid) => void kept.set(key, { note: JSON.stringify(note), laid }),
  };
}
