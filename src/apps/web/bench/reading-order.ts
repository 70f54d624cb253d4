import type { ItemFile } from '../../../bench/views/index.ts';

type Reading = ItemFile['readings'][number];

export const ORDERS = [
  { id: 'latest', name: 'Latest first' },
  { id: 'farthest', name: 'Farthest off first' },
  { id: 'point', name: 'By point' },
] as const;
export type Order = (typeof ORDERS)[number]['id'];

/** Readings, told oldest first, in the order of choice. OL against a number cannot be measured in spreads and is as far off as can be. */
export function sorted(readings: readonly Reading[], order: Order): readonly Reading[] {
  const latest = readings.toReversed();
  if (order === 'farthest') return latest.sort((a, b) => farOff(b) - farOff(a));
  return order === 'point' ? latest.sort((a, b) => a.name.localeCompare(b.name, undefined, { numeric: true })) : latest;
}

function farOff({ sigmas, reference, expected, value }: Reading): number {
  if (sigmas !== null) return Math.abs(sigmas);
  const good = reference ?? expected;
  if (good === null) return -1;
  return good.startsWith('OL') === (value === null) ? 0 : Infinity;
}
