import type { PartKind, Pattern } from '../../core/fit/index.ts';
import type { BadCell } from '../csv/csv-table.ts';
import { numberIn, wordIn } from '../csv/csv-table.ts';

/** What pads do not say of a part or of a place; null where it is not told. */
export interface Told {
  readonly kind: PartKind | null;
  /** Of a part its height, of a place the room above it. */
  readonly heightMm: number | null;
  /** Where it is plugged in: 0 to the right, 90 up, as its pads are drawn. */
  readonly facesDeg: number | null;
  /** How far its edge is from the origin of the pads, that way. */
  readonly reachMm: number | null;
  readonly contacts: 'top' | 'bottom' | 'both' | null;
}

export const NOT_TOLD: Told = { kind: null, heightMm: null, facesDeg: null, reachMm: null, contacts: null };

export const PART_KINDS: readonly PartKind[] = [
  'chip',
  'gull-wing',
  'j-lead',
  'no-lead',
  'legs',
  'wire-legs',
  'connector',
  'ribbon-socket',
  'other',
];

/** The pattern with what was told put over what it says itself. */
export function withTold(pattern: Pattern, { kind, heightMm, facesDeg, reachMm, contacts }: Told): Pattern {
  const faces = facesDeg ?? pattern.mouth?.facesDeg ?? null;
  return {
    ...pattern,
    kind: kind ?? pattern.kind,
    heightMm: heightMm ?? pattern.heightMm,
    mouth: faces === null ? null : { facesDeg: faces, reachMm: reachMm ?? pattern.mouth?.reachMm ?? null },
    contacts: contacts ?? pattern.contacts,
  };
}

export const TOLD_COLUMNS = ['part_kind', 'height_mm', 'mouth_deg', 'mouth_reach_mm', 'contacts'] as const;
type Cells = Readonly<Record<(typeof TOLD_COLUMNS)[number], string>>;

const KINDS: Readonly<Record<string, PartKind | null>> = { '': null, ...Object.fromEntries(PART_KINDS.map((kind) => [kind, kind])) };
const CONTACTS: Readonly<Record<string, Told['contacts']>> = { '': null, top: 'top', bottom: 'bottom', both: 'both' };
const NUMBERS = [
  ['height_mm', 'heightMm', 'millimetres'],
  ['mouth_deg', 'facesDeg', 'degrees'],
  ['mouth_reach_mm', 'reachMm', 'millimetres'],
] as const;

/** What the cells of a table tell; empty ones tell nothing. */
export function toldIn(cells: Cells): Told | BadCell {
  const kind = wordIn('part_kind', cells.part_kind, KINDS);
  if (kind !== null && typeof kind === 'object') return kind;
  const contacts = wordIn('contacts', cells.contacts, CONTACTS);
  if (contacts !== null && typeof contacts === 'object') return contacts;
  const told: { -readonly [K in keyof Told]: Told[K] } = { ...NOT_TOLD, kind, contacts };
  for (const [column, field, wanted] of NUMBERS) {
    if (cells[column].trim() === '') continue;
    const value = numberIn(column, cells[column], null, wanted);
    if (typeof value !== 'number') return value;
    if (field === 'heightMm' && !(value > 0)) return { field: column, message: 'is not above zero', next: 'Measure it again, in mm.' };
    told[field] = value;
  }
  return told;
}
