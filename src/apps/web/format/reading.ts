const UNITS: Readonly<Record<string, string>> = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };
const PREFIXES: readonly (readonly [number, string])[] = [
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, 'µ'],
];

/** "4.7 kΩ", "512 mV diode", "OL" for what a meter showed; `value` in V, Ω or A. */
export function reading(value: number | null, mode: string): string {
  if (value === null) return 'OL';
  const unit = UNITS[mode] ?? '';
  const text = mode === 'diode' ? `${Number(value.toPrecision(3))} ${unit}` : scaled(value, unit);
  return mode === 'diode' ? `${text} diode` : text;
}

function scaled(value: number, unit: string): string {
  const size = Math.abs(value);
  if (size === 0) return `0 ${unit}`;
  const shown = Number(size.toPrecision(4));
  const [factor, prefix] = PREFIXES.find(([least]) => shown >= least) ?? PREFIXES.at(-1)!;
  return `${value < 0 ? '−' : ''}${Number((size / factor).toPrecision(4))} ${prefix}${unit}`;
}

/** The unit of a meter mode: V, Ω or A. */
export const unitOf = (mode: string): string => UNITS[mode] ?? '';
