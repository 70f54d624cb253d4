/** Largest argument of an exponential before it goes on as a straight line; e^80 is past any current that a board carries. */
const MAX_ARGUMENT = 80;

/**
 * Junction voltage that Newton may use next, after Nagel, "SPICE2" (UCB/ERL M520, 1975), App. 2: a forward step past the critical voltage goes by
 * the logarithm of the current instead of by the voltage. `nVt` is emission coefficient × thermal voltage.
 */
export function limitJunction(next: number, last: number, nVt: number, critical: number): number {
  if (next <= critical || Math.abs(next - last) <= 2 * nVt) return next;
  if (last <= 0) return nVt * Math.log(next / nVt);
  const argument = 1 + (next - last) / nVt;
  return argument > 0 ? last + nVt * Math.log(argument) : critical;
}

/** Voltage past which a junction's current grows faster than Newton can follow: nVt·ln(nVt / (√2·Is)) (Nagel 1975). */
export const criticalVoltage = (nVt: number, saturationA: number): number => nVt * Math.log(nVt / (Math.SQRT2 * saturationA));

/** Is·(e^(v/nVt) − 1), as a straight line past the largest argument. */
export function junctionCurrent(v: number, nVt: number, saturationA: number): number {
  const argument = v / nVt;
  if (argument <= MAX_ARGUMENT) return saturationA * Math.expm1(argument);
  return saturationA * Math.exp(MAX_ARGUMENT) * (1 + argument - MAX_ARGUMENT);
}

/** Its slope, S. */
export const junctionSlope = (v: number, nVt: number, saturationA: number): number =>
  (saturationA / nVt) * Math.exp(Math.min(v / nVt, MAX_ARGUMENT));
