import { normalQuantile, type RandomStream } from '../../numeric/index.ts';
import type { Netlist, Part } from '../netlist/types.ts';

/** One board of a series. */
export interface Draw {
  /** A factor on the principal value of each part, by its index in the netlist. */
  readonly scale: Float64Array;
  /** How many standard deviations the resistance of a leak or a short, or the dirt of a contact, is off what is typical. */
  readonly severity: number;
}

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

/**
 * Boards with parts within their tolerances, the same for every fault that is tried on them. `spreadOf` goes before the parameter `spread` of a part, and that
 * before the table. Severities are one in each of
 * `count` stretches of like chance, from low to high: the next board is then close to the one before.
 */
export function drawBoards(
  netlist: Netlist,
  count: number,
  random: RandomStream,
  spreadOf: (part: Part) => number | undefined = () => undefined,
): Draw[] {
  const spreads = netlist.parts.map((part) => spreadOf(part) ?? part.params['spread'] ?? TOLERANCES[part.kind] ?? 0);
  return Array.from({ length: count }, (_, d) => ({
    scale: Float64Array.from(spreads, (spread) => Math.exp(spread * normal(random))),
    severity: normalQuantile((d + random()) / count),
  }));
}

/** A standard normal number by Box & Muller (1958). */
function normal(random: RandomStream): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
