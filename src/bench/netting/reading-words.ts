import { scaledText } from '../../core/quantity/index.ts';
import type { ModelCheckView } from '../views/index.ts';

type Odd = ModelCheckView['odd'][number];

const UNITS: Readonly<Record<Odd['mode'], string>> = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };

/** "3.28 V", "OL": a reading of a mode. */
const readingWords = (mode: Odd['mode'], value: number | null): string => (value === null ? 'OL' : scaledText(value, UNITS[mode]));

/** What good boards read at a point, and what the netlist says instead. */
export function oddWords({ name, mode, read, spread, predicted, spreads }: Odd): string {
  const within = read === null ? '' : ` ± ${scaledText(spread, UNITS[mode], 2)}`;
  const off = spreads === null ? '' : `, ${spreads} spreads off`;
  return `${name}: good boards read ${readingWords(mode, read)}${within}, the netlist says ${readingWords(mode, predicted)}${off}.`;
}
