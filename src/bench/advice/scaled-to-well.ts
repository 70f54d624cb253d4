/**
 * Chances of single faults in the same proportions, scaled so that, were the faults independent, the chance of none
 * would be `well`. What is known of an assembly may be "one of these two, surely": taken as independent, its single
 * chances alone would make it too likely to be well. When a chance would exceed 1 the scaling stops there.
 */
export function scaledToWell(chances: Readonly<Record<string, number>>, well: number): Readonly<Record<string, number>> {
  const entries = Object.entries(chances);
  const greatest = Math.max(0, ...entries.map(([, chance]) => chance));
  if (greatest === 0) return chances;
  const noneAt = (scale: number): number => entries.reduce((none, [, chance]) => none * (1 - scale * chance), 1);
  let low = 0;
  let high = 1 / greatest;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (noneAt(middle) > well) low = middle;
    else high = middle;
  }
  return Object.fromEntries(entries.map(([fault, chance]) => [fault, Math.min(1, high * chance)]));
}
