/** What a calculator shows: the number, and all that is needed to judge it. */
export interface Reckoning {
  readonly value: number;
  readonly unit: string;
  /** What the true value lies between, as far as it can be said. */
  readonly low: number;
  readonly high: number;
  /** Why it is no surer than that. */
  readonly why: string;
  readonly formula: string;
  /** Author, year, standard; or "common practice, no source". */
  readonly source: string;
  /** Where the formula holds. */
  readonly range: string;
  /** Whether what was put in lies there. */
  readonly inRange: boolean;
}

/** A reckoning that is uncertain by shares of its value below and above: 0.1 is ten per cent. */
export function reckoning(
  value: number,
  spread: readonly [below: number, above: number],
  rest: Omit<Reckoning, 'value' | 'low' | 'high'>,
): Reckoning {
  return { value, low: value * (1 - spread[0]), high: value * (1 + spread[1]), ...rest };
}
