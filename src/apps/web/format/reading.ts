import { scaledText } from '../../../core/quantity/index.ts';

const UNITS: Readonly<Record<string, string>> = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };
/** "4.7 kΩ", "512 mV diode", "OL" for what a meter showed; `value` in V, Ω or A. */
export function reading(value: number | null, mode: string): string {
  if (value === null) return 'OL';
  const unit = UNITS[mode] ?? '';
  const text = mode === 'diode' ? `${Number(value.toPrecision(3))} ${unit}` : scaledText(value, unit);
  return mode === 'diode' ? `${text} diode` : text;
}

/** The unit of a meter mode: V, Ω or A. */
export const unitOf = (mode: string): string => UNITS[mode] ?? '';
