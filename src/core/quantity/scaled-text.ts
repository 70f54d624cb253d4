const PREFIXES: readonly (readonly [number, string])[] = [
  [1e9, 'G'],
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, 'µ'],
  [1e-9, 'n'],
  [1e-12, 'p'],
];

/** "4.7 kΩ", "−512 mV": a value in a unit of SI with the prefix that suits it, to so many figures. What is below a pico is shown in pico. */
export function scaledText(value: number, unit: string, figures = 4): string {
  const size = Math.abs(value);
  if (size === 0) return `0 ${unit}`;
  const shown = Number(size.toPrecision(figures));
  const [factor, prefix] = PREFIXES.find(([least]) => shown >= least) ?? PREFIXES.at(-1)!;
  return `${value < 0 ? '−' : ''}${Number((size / factor).toPrecision(figures))} ${prefix}${unit}`;
}
