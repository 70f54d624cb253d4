/** Largest argument of an exponential before it goes on as a straight line; e^80 is past any current that a board carries. */
const MAX_ARGUMENT = 80;
/** Below this argument the exponential is nothing beside the 1 that is taken from it. */
const MIN_ARGUMENT = -40;

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

/** e^(v/nVt), held at its largest argument; the current is Is·(e − 1) up to there, and its slope Is·e/nVt. */
export function junctionExp(v: number, nVt: number): number {
  const argument = v / nVt;
  return argument < MIN_ARGUMENT ? 0 : Math.exp(Math.min(argument, MAX_ARGUMENT));
}

/** Current beyond Is·(e − 1) where the exponential is held: the straight line goes on with its slope. 0 on any real board. */
export function currentPastExp(v: number, nVt: number, slopeS: number): number {
  return v > MAX_ARGUMENT * nVt ? slopeS * (v - MAX_ARGUMENT * nVt) : 0;
}
