import type { BenchState } from './state.ts';

/**
 * The state as canonical text: equal logs give equal text, whatever order things were put into its maps. Keys and map
 * entries are sorted by code unit; meant for hashing and comparing, not for reading back.
 */
export const stateText = (state: Readonly<BenchState>): string => JSON.stringify(plain(state));

function plain(value: unknown): unknown {
  if (value instanceof Map) return [...value].map(([key, inner]) => [key, plain(inner)] as const).sort(byKey);
  if (value instanceof Set) return [...value].sort();
  if (Array.isArray(value)) return value.map(plain);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, inner]) => inner !== undefined)
      .map(([key, inner]) => [key, plain(inner)] as const)
      .sort(byKey),
  );
}

const byKey = ([a]: readonly [unknown, unknown], [b]: readonly [unknown, unknown]): number => (String(a) < String(b) ? -1 : 1);
