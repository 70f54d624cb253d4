/**
 * Mean of what a normal variable exceeds a limit by: sd · (φ(z) − z · Q(z)), z = (limit − mean) / sd.
 * Q by Abramowitz & Stegun (1964) 26.2.17, from memory, |error| < 7.5e-8.
 */
export function expectedExcess(mean: number, variance: number, limit: number): number {
  const sd = Math.sqrt(Math.max(0, variance));
  if (sd < 1e-9) return Math.max(0, mean - limit);
  const z = (limit - mean) / sd;
  if (z > 8) return 0;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return Math.max(0, sd * (density - z * above(z)));
}

function above(z: number): number {
  if (z < 0) return 1 - above(-z);
  const t = 1 / (1 + 0.2316419 * z);
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return density * t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429)))); // A&S 26.2.17
}
