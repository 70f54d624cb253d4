import { assertPositive } from '../rework-error.ts';

/**
 * How thick the copper foil of "one ounce a square foot" is taken to be: conventions differ by 2.4 %, so that each answer
 * says which one it used. By mass: 28.3495 g on 0.092903 m², over the density in g/cm³.
 */
export const FOILS = {
  'by-mass-8.93': { um: 28.3495 / 0.092903 / 8.93, text: 'by mass, copper of 8.93 g/cm³' },
  'by-mass-8.89': { um: 28.3495 / 0.092903 / 8.89, text: 'by mass, foil of 8.89 g/cm³' },
  'nominal-34.3': { um: 34.3, text: 'nominal 34.3 µm (IPC-4562, from memory)' },
  '1.37-mil': { um: 1.37 * 25.4, text: '1.37 mil' },
  '1.378-mil': { um: 1.378 * 25.4, text: '1.378 mil, as makers of calculators take it' },
} as const;
export type Foil = keyof typeof FOILS;

/** Thickness in m of so many ounces a square foot, by a stated convention. */
export function foilThickness(ounces: number, foil: Foil): number {
  assertPositive({ ounces });
  return ounces * FOILS[foil].um * 1e-6;
}
