/**
 * Corners and steps of the behavioural parts, rounded so that Newton can follow, with their slopes. docs/netlist-format.md states them.
 */

/** Half-width of the rounding where one limit takes over from another, in V: small beside any rail, wide enough for Newton. */
export const ROUNDING_V = 4e-3;

/** The larger of two, exact where they differ by more than the rounding; between, a parabola that meets both with their slopes. */
export function softMax(a: number, b: number): number {
  const d = a - b;
  if (d >= ROUNDING_V) return a;
  return d <= -ROUNDING_V ? b : (a + b) / 2 + ((d * d) / ROUNDING_V + ROUNDING_V) / 4;
}

/** Slope of `softMax` by its first argument, 0..1; the slope by the second is the rest to 1. */
export function shareInMax(a: number, b: number): number {
  const d = a - b;
  if (d >= ROUNDING_V) return 1;
  return d <= -ROUNDING_V ? 0 : (d / ROUNDING_V + 1) / 2;
}

export const softMin = (a: number, b: number): number => -softMax(-a, -b);

/** Slope of `softMin` by its first argument. */
export const shareInMin = (a: number, b: number): number => shareInMax(b, a);

/** 0 well below zero, 1 well above, over a few widths: 1 / (1 + e^(−v/w)). Its slope by v is s·(1 − s)/w. */
export function softStep(v: number, widthV: number): number {
  const argument = v / widthV;
  if (argument > 40) return 1;
  return 1 / (1 + Math.exp(-Math.max(argument, -60)));
}
