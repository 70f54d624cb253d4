import type { BeliefView } from '../../../bench/views/index.ts';

type Hypothesis = BeliefView['hypotheses'][number];

/** "Display cable worn and battery flat", "Something that is not in the model", "Nothing wrong". */
export function hypothesisWords(each: Pick<Hypothesis, 'faults' | 'unknown'>): string {
  const names = each.faults.map((fault) => fault.name);
  if (each.unknown) names.push('something that is not in the model');
  const words = names.length === 0 ? 'nothing wrong' : names.join(' and ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Names a hypothesis across readings, whichever of those alike comes first, so that its bar moves instead of being drawn anew. */
export const hypothesisKey = ({ faults, alike, unknown }: Hypothesis): string =>
  unknown
    ? 'unknown'
    : [...faults, ...alike]
        .map(({ id }) => id)
        .sort()
        .join(' ') || 'none';

/** The remedy that serves all of a group that no check tells apart; undefined when the hypothesis is no such group. */
export const groupOf = (groups: BeliefView['groups'], { faults, alike }: Hypothesis): BeliefView['groups'][number] | undefined =>
  alike.length === 0 || faults.length !== 1 ? undefined : groups.find((group) => group.faults.some(({ id }) => id === faults[0]!.id));
