/** Distribution of a number of things that work: so many surely, and `tail[i]` the chance that at least i more do. */
export interface Tails {
  readonly sure: number;
  readonly tail: Float64Array;
}

/**
 * The chances that at least 0, 1, 2 … of independent things work, each with its own chance, by convolving one after
 * the other (the Poisson binomial distribution; Poisson 1837). Exact; n² / 2 steps for n doubtful things.
 */
export function tailsOf(chances: readonly number[]): Tails {
  const pmf = new Float64Array(chances.length + 1);
  let [sure, n] = [0, 0];
  pmf[0] = 1;
  for (const p of chances) {
    if (p <= 0) continue;
    if (p >= 1) {
      sure++;
      continue;
    }
    n++;
    pmf[n] = pmf[n - 1]! * p;
    for (let i = n - 1; i > 0; i--) pmf[i] = pmf[i]! * (1 - p) + pmf[i - 1]! * p;
    pmf[0]! *= 1 - p;
  }
  const tail = new Float64Array(n + 1);
  let sum = 0;
  for (let i = n; i > 0; i--) {
    sum += pmf[i]!;
    tail[i] = sum;
  }
  tail[0] = 1;
  return { sure, tail };
}

/** Chance that at least `count` work. */
export function atLeast({ sure, tail }: Tails, count: number): number {
  if (count <= sure) return 1;
  return count - sure < tail.length ? tail[count - sure]! : 0;
}

/** The most that can work. */
export const mostOf = ({ sure, tail }: Tails): number => sure + tail.length - 1;
