import type { ReadClaim } from '../../../bench/scout/index.ts';

/** A stretch of a text: as it is, or words that something was read from. */
export interface Stretch {
  readonly from: number;
  readonly text: string;
  /** The first claim that was read from it; null for words that say nothing. */
  readonly read: ReadClaim | null;
}

/** A text cut at the words of its claims, in order. Where words of two claims overlap the one that begins first is marked to its end. */
export function highlights(text: string, claims: readonly ReadClaim[]): Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  const plain = (to: number): void => {
    if (to > at) stretches.push({ from: at, text: text.slice(at, to), read: null });
  };
  for (const read of claims.filter(({ words }) => words !== '').sort((a, b) => a.span.from - b.span.from)) {
    const from = Math.max(at, read.span.from);
    if (read.span.to <= at) continue;
    plain(from);
    stretches.push({ from, text: text.slice(from, read.span.to), read });
    at = read.span.to;
  }
  plain(text.length);
  return stretches;
}
