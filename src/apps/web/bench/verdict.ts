/** What a distance from good boards says, in their spreads; of OL against a number in words. */
export function verdict(reference: string | null, sigmas: number | null, value: number | null): string {
  if (reference === null) return 'no reference';
  const isGoodOl = reference.startsWith('OL');
  if (value === null || isGoodOl) return isGoodOl && value === null ? 'as good' : isGoodOl ? 'a number, not OL' : 'OL, not a number';
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
