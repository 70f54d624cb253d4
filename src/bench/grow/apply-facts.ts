import type { GrownFact } from './grown-model.ts';

/** A model file on its way: sections by name, not yet checked. */
export type DraftFile = Readonly<Record<string, unknown>>;
type Entry = Readonly<Record<string, unknown>>;

/** The section `circuit` before anything is said of it: netlist and marked parts are kept with the model, so their files have names only. */
const NO_CIRCUIT: Entry = { netlist: 'board.cir', placement: 'placement.csv', states: [{ id: 'off', name: 'Off' }] };

/** The draft with one fact in it. A field of an entry that is not there makes nothing of it; the shape is checked afterwards. */
export function withFactIn(
  draft: DraftFile,
  { section, id, field, value }: Pick<GrownFact, 'section' | 'id' | 'field' | 'value'>,
): DraftFile {
  if (section === 'head') return setIn(draft, id, field, value);
  if (section === 'circuit') return { ...draft, circuit: setIn({ ...NO_CIRCUIT, ...asEntry(draft['circuit']) }, id, field, value) };
  const entries = Array.isArray(draft[section]) ? (draft[section] as Entry[]) : [];
  return { ...draft, [section]: inList(entries, id, field, value) };
}

function inList(entries: readonly Entry[], id: string, field: string | null, value: unknown): readonly Entry[] {
  const at = entries.findIndex((entry) => entry['id'] === id);
  if (field === null && value === null) return entries.filter((_, index) => index !== at);
  if (field === null) {
    const whole = { ...(value as object), id };
    return at < 0 ? [...entries, whole] : entries.with(at, whole);
  }
  return at < 0 ? entries : entries.with(at, set(entries[at]!, field, value));
}

const setIn = (entry: Entry, id: string, field: string | null, value: unknown): Entry =>
  set(entry, id, field === null ? value : set(asEntry(entry[id]), field, value));

/** With `name` set, or without it where `value` is null. */
const set = (entry: Entry, name: string, value: unknown): Entry =>
  value === null ? Object.fromEntries(Object.entries(entry).filter(([key]) => key !== name)) : { ...entry, [name]: value };

const asEntry = (value: unknown): Entry => (typeof value === 'object' && value !== null ? (value as Entry) : {});
