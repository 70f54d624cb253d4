/** "37 %"; the ends are said in words, for an estimate is never certain. */
export function chance(probability: number): string {
  if (probability < 0.005) return 'under 1 %';
  if (probability > 0.995) return 'over 99 %';
  return `${Math.round(probability * 100)} %`;
}

/** "25 min", "1 h 20 min"; fractions below ten minutes to one digit. */
export function duration(minutes: number): string {
  if (minutes < 10) return `${Number(minutes.toFixed(1))} min`;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/** "1 unit", "3 units". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count.toLocaleString()} ${count === 1 ? one : many}`;
