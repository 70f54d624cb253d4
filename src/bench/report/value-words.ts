import type { TestValue } from '../events/index.ts';

/** "Capacity 1.834 A h": a number of a test as it is printed, to four figures. */
export const valueWords = ({ name, value, unit }: TestValue): string =>
  `${name} ${Number(value.toPrecision(4))}${unit === '' ? '' : ` ${unit}`}`;
