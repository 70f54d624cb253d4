/** What a distance from good boards says, in their spreads. */
export function verdict(reference: string | null, sigmas: number | null): string {
  if (reference === null) return 'no reference';
  if (sigmas === null) return 'not comparable';
  const size = Math.abs(sigmas);
  const far = size >= 100 ? 'over 100' : size.toFixed(1);
  if (size < 2) return `as good (${far} spreads off)`;
  const where = sigmas > 0 ? 'high' : 'low';
  return size < 4 ? `somewhat ${where} (${far} spreads)` : `${where} (${far} spreads)`;
}

/** Whether the likeliest fault would show it. */
export function fitWords(fits: boolean | null): string {
  if (fits === null) return 'cannot say';
  return fits ? 'to be expected' : 'not expected';
}
