import { given, listed, NOT_TOLD, ofBag, withTold, type Candidate, type ListedPart, type Told } from '../../../bench/fit/index.ts';
import type { DrawerView, FitLine } from '../../../bench/views/index.ts';
import type { NamedPattern } from './named-pattern.ts';

/** What was told of the place, and of each part by its key. */
export type AllTold = Readonly<Record<string, Told>>;
export const PLACE = 'place';

/** The same part keeps its key however the answers are ordered. */
export const keyOf = ({ from, bag_id: bag, name }: Pick<FitLine, 'from' | 'bag_id' | 'name'>): string => `${from} ${bag ?? name}`;

export const toldOf = (told: AllTold, key: string): Told => told[key] ?? NOT_TOLD;

/** Everything that may go on the place, under names that differ, with what was told of it. */
export function candidatesOf(
  parts: readonly NamedPattern[],
  bags: DrawerView['bags'],
  list: readonly ListedPart[],
  told: AllTold,
): Candidate[] {
  const all = [...parts.map(({ name, pattern }) => given(name, pattern)), ...bags.flatMap((bag) => ofBag(bag) ?? []), ...list.map(listed)];
  const seen = new Map<string, number>();
  return all.map((candidate) => {
    const key = keyOf(candidate);
    const times = (seen.get(key) ?? 0) + 1;
    seen.set(key, times);
    const named = times === 1 ? candidate : { ...candidate, name: `${candidate.name} (${times})` };
    return { ...named, pattern: withTold(named.pattern, toldOf(told, keyOf(named))) };
  });
}
