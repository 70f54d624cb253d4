/** What a code of chip size may mean: length and width in tenths of a millimetre as the metric code says, such as 1608. */
export interface ChipSize {
  readonly imperial: string;
  readonly metric: string;
}

/** Source: codes as the names of open land patterns pair them; checked against check values 4.7. */
const SIZES: readonly ChipSize[] = Object.entries({
  '01005': '0402',
  '0201': '0603',
  '0402': '1005',
  '0603': '1608',
  '0805': '2012',
  '1206': '3216',
  '1210': '3225',
  '1812': '4532',
  '2010': '5025',
  '2512': '6332',
}).map(([imperial, metric]) => ({ imperial, metric }));

/** Every size that a bare code may mean: two for 0402 and 0603, which are both an imperial and a metric code; none when it is unknown. */
export const chipSizes = (code: string): ChipSize[] => SIZES.filter(({ imperial, metric }) => code === imperial || code === metric);

/** Nominal length and width of a size, mm. */
export const chipMm = ({ metric }: ChipSize): readonly [lengthMm: number, widthMm: number] => [
  Number(metric.slice(0, 2)) / 10,
  Number(metric.slice(2)) / 10,
];
