import { scaledText } from '../../core/quantity/index.ts';
import type { Reckoning } from '../../core/rework/index.ts';

/** "885 mA (708 mA to 1.15 A)": a value with what it lies between, to three figures. Lengths are in mm. */
export function reckoningText({ value, low, high, unit }: Reckoning): string {
  const text = (number: number): string => valueText(number, unit);
  return low === high ? text(value) : `${text(value)} (${text(low)} to ${text(high)})`;
}

function valueText(value: number, unit: string): string {
  if (unit === 'm') return `${Number((value * 1e3).toPrecision(3))} mm`;
  if (unit === 'h') return `${Number(value.toPrecision(3))} h`;
  return scaledText(value, unit, 3);
}
