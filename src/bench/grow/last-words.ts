import type { GrownFact } from './grown-model.ts';

/** The last word on each place, in the order in which they were told; a whole entry makes an end of what was said of its fields before. */
export function lastWords(facts: readonly GrownFact[]): GrownFact[] {
  const entries = new Set<string>();
  const fields = new Set<string>();
  const last = facts.toReversed().filter(({ section, id, field }) => {
    const entry = `${section} ${id}`;
    const place = `${entry} ${field ?? ''}`;
    if (entries.has(entry) || fields.has(place)) return false;
    (field === null ? entries : fields).add(field === null ? entry : place);
    return true;
  });
  return last.toReversed();
}
