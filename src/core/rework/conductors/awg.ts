import { reckoning, type Reckoning } from '../reckoning.ts';
import { assertPositive, ReworkError } from '../rework-error.ts';
import { copperResistivity } from './copper.ts';

/** Diameter in m of a gauge number: d = 0.127 mm × 92^((36 − n) / 39) (ASTM B258). 4/0 is −3, 0 is 0. */
export function awgDiameter(gauge: number): number {
  if (!(gauge >= -3 && gauge <= 56)) throw new ReworkError('bad-number', `a gauge runs from −3 (4/0) to 56, got ${gauge}`);
  return 0.127e-3 * 92 ** ((36 - gauge) / 39);
}

/** The gauge of a diameter in m, not rounded; the inverse of `awgDiameter`. */
export function awgOf(diameterM: number): number {
  assertPositive({ diameterM });
  return 36 - (39 * Math.log(diameterM / 0.127e-3)) / Math.log(92);
}

/** m² of a round wire. */
export const sectionOf = (diameterM: number): number => (Math.PI / 4) * diameterM ** 2;

/** Resistance of a solid round copper wire, Ω. */
export function wireResistance(diameterM: number, lengthM: number, celsius = 20): Reckoning {
  assertPositive({ diameterM, lengthM });
  return reckoning((copperResistivity(celsius) * lengthM) / sectionOf(diameterM), [0.02, 0.1], {
    unit: 'Ω',
    formula: 'R = ρ l / (π d² / 4), d = 0.127 mm × 92^((36 − n) / 39)',
    source: 'ASTM B258 for the diameter; annealed copper: IACS 1913, IEC 60028',
    why: 'Drawn wire varies by about 1 % in diameter. Stranded or tinned wire of the same gauge is up to a tenth more resistive.',
    range: 'solid annealed copper, −50 to 200 °C, direct current',
    inRange: celsius >= -50 && celsius <= 200,
  });
}
