import { reckoning, type Reckoning } from '../reckoning.ts';
import { assertPositive, ReworkError } from '../rework-error.ts';

/** International Annealed Copper Standard at 20 °C (1913; IEC 60028): Ω·m, and the share it rises by for each kelvin. */
export const COPPER = { resistivity: 1.7241e-8, perKelvin: 0.00393 } as const;

/** Foil of a board is up to so much more resistive than the standard: 0.162 against 0.15328 Ω·g/m² (IPC-MF-150, quoted in 2000). */
export const FOIL_ABOVE_STANDARD = 0.162 / 0.15328 - 1;

/** Plating, etching and wear move the cross-section of a real track by about this much. Common practice, no source. */
const SECTION_SPREAD = 0.1;

/** Ω·m of annealed copper at a temperature in °C: ρ = ρ₂₀ (1 + α (T − 20)). */
export function copperResistivity(celsius: number): number {
  if (!(celsius > -234) || !Number.isFinite(celsius)) throw new ReworkError('bad-number', `copper has no resistivity at ${celsius} °C`);
  return COPPER.resistivity * (1 + COPPER.perKelvin * (celsius - 20));
}

export interface Track {
  readonly lengthM: number;
  readonly widthM: number;
  readonly thicknessM: number;
}

/** Resistance of a track: R = ρ l / (w t). Ω. */
export function trackResistance(track: Track, celsius = 20): Reckoning {
  const { lengthM, widthM, thicknessM } = track;
  assertPositive({ lengthM, widthM, thicknessM });
  const value = (copperResistivity(celsius) * lengthM) / (widthM * thicknessM);
  return reckoning(value, [SECTION_SPREAD, SECTION_SPREAD + FOIL_ABOVE_STANDARD], {
    unit: 'Ω',
    formula: 'R = ρ l / (w t), ρ = 1.7241e-8 Ωm (1 + 0.00393 (T − 20))',
    source: 'Annealed copper: IACS 1913, IEC 60028',
    why: `Foil may be ${(FOIL_ABOVE_STANDARD * 100).toFixed(1)} % more resistive than annealed copper, and etching and plating change the section.`,
    range: '−50 to 200 °C, direct current',
    inRange: celsius >= -50 && celsius <= 200,
  });
}

/** Ω of each square of a foil, whatever the size of the square. */
export const sheetResistance = (thicknessM: number, celsius = 20): number => copperResistivity(celsius) / thicknessM;

/** What a current loses on the way there and back, V, and what it heats there, W. `resistance` is that of one way. */
export function dropOf(resistance: number, currentA: number, ways: 1 | 2 = 1): { readonly volts: number; readonly watts: number } {
  const volts = resistance * ways * currentA;
  return { volts, watts: volts * currentA };
}
