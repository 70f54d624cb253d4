const SHOWN = 6;

/** A list of the names that there are, the most alike first and at most six: "power, light" or "none yet". */
export function nearest(wanted: string, known: Iterable<string>): string {
  const names = [...known];
  if (names.length === 0) return 'none yet';
  const ranked = names.map((name) => ({ name, likeness: likeness(wanted, name) })).sort((a, b) => b.likeness - a.likeness);
  const shown = ranked.slice(0, SHOWN).map(({ name }) => name);
  return names.length > SHOWN ? `${shown.join(', ')} and ${names.length - SHOWN} more` : shown.join(', ');
}

/** Shared pairs of neighbouring letters over all pairs, 0 to 1 (Dice 1945, on bigrams). */
function likeness(a: string, b: string): number {
  const [pairsA, pairsB] = [pairsOf(a), pairsOf(b)];
  const shared = [...pairsA].filter((pair) => pairsB.has(pair)).length;
  return (2 * shared) / (pairsA.size + pairsB.size || 1);
}

function pairsOf(word: string): Set<string> {
  const lower = ` ${word.toLowerCase()}`;
  return new Set(Array.from({ length: lower.length - 1 }, (_, i) => lower.slice(i, i + 2)));
}
