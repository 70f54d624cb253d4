/** Chip sizes by their name in hundredths of an inch, with the name in tenths of a millimetre. */
const SIZES = [
  ['01005', '0402'],
  ['0201', '0603'],
  ['0402', '1005'],
  ['0603', '1608'],
  ['0805', '2012'],
  ['1206', '3216'],
  ['1210', '3225'],
  ['1812', '4532'],
  ['2010', '5025'],
  ['2512', '6332'],
] as const;

export interface ChipSize {
  readonly imperial: string;
  readonly metric: string;
  /** As the metric name has it: rounded, and 0.1 mm off for some makers. */
  readonly lengthMm: number;
  readonly widthMm: number;
}

export type ChipSizeAnswer =
  | { readonly ok: true; readonly size: ChipSize }
  /** The number is a name in both systems, of chips that differ by more than two: ask which, or measure one. */
  | { readonly ok: false; readonly code: 'imperial-or-metric'; readonly asImperial: ChipSize; readonly asMetric: ChipSize }
  | { readonly ok: false; readonly code: 'unknown-size' };

/** The chip of a size name. Without a system, a name that exists in both is not guessed. */
export function chipSize(name: string, system?: 'imperial' | 'metric'): ChipSizeAnswer {
  const text = name.trim();
  const imperial = system === 'metric' ? undefined : SIZES.find(([own]) => own === text);
  const metric = system === 'imperial' ? undefined : SIZES.find(([, own]) => own === text);
  if (imperial && metric) return { ok: false, code: 'imperial-or-metric', asImperial: sizeOf(imperial), asMetric: sizeOf(metric) };
  const found = imperial ?? metric;
  return found ? { ok: true, size: sizeOf(found) } : { ok: false, code: 'unknown-size' };
}

/** The chip whose length and width are nearest to what was measured, mm. */
export function chipSizeMeasured(lengthMm: number, widthMm: number): ChipSize {
  const sizes = SIZES.map(sizeOf);
  const away = (size: ChipSize): number => Math.abs(Math.log(size.lengthMm / lengthMm)) + Math.abs(Math.log(size.widthMm / widthMm));
  return sizes.reduce((best, each) => (away(each) < away(best) ? each : best));
}

const sizeOf = ([imperial, metric]: (typeof SIZES)[number]): ChipSize => ({
  imperial,
  metric,
  lengthMm: Number(metric.slice(0, 2)) / 10,
  widthMm: Number(metric.slice(2)) / 10,
});
