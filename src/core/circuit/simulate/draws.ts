import type { RandomStream } from '../../numeric/index.ts';
import type { Netlist, Part } from '../netlist/types.ts';

/** One board of a series: a factor on the principal value of each part, by its index in the netlist. */
export type Draw = Float64Array;

/**
 * Relative spread (standard deviation of the logarithm) of the principal value from board to board, by kind: resistance, voltage, set-point, current of a
 * load, saturation current, transconductance. Common practice, no source; kinds that are absent do not vary in a way that shows at rest.
 */
export const TOLERANCES: Partial<Record<Part['kind'], number>> = {
  R: 0.006,
  V: 0.01,
  BATTERY: 0.015,
  LINREG: 0.008,
  BOOST: 0.01,
  BUCK: 0.01,
  CHARGER: 0.004,
  LOAD: 0.15,
  D: 0.25,
  Q: 0.25,
  M: 0.1,
};

/** Boards with parts within their tolerances, the same for every fault that is tried on them. `spreadOf` goes before the table. */
export function drawBoards(
  netlist: Netlist,
  count: number,
  random: RandomStream,
  spreadOf: (part: Part) => number | undefined = () => undefined,
): Draw[] {
  const spreads = netlist.parts.map((part) => spreadOf(part) ?? TOLERANCES[part.kind] ?? 0);
  return Array.from({ length: count }, () => Float64Array.from(spreads, (spread) => Math.exp(spread * normal(random))));
}

/** A standard normal number by Box & Muller (1958). */
function normal(random: RandomStream): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
