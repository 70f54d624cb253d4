/** "9 days", "6 weeks", "over a year": for a time on the market, with no more digits than it is good for. */
export function duration(days: number): string {
  if (days < 1.5) return 'a day';
  if (days < 21) return `${Math.round(days)} days`;
  if (days < 90) return `${Math.round(days / 7)} weeks`;
  return days <= 365 ? `${Math.round(days / 30.4)} months` : 'over a year';
}
