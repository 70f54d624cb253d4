/** What a placement says of a part, in the order in which it is written. */
export const PLACEMENT_FIELDS = ['ref', 'x', 'y', 'rotation', 'side', 'value', 'package', 'block', 'nets'] as const;
export type PlacementField = (typeof PLACEMENT_FIELDS)[number];

export const LENGTH_UNITS = { mm: 1, um: 1e-3, mil: 0.0254, inch: 25.4 } as const;
export type LengthUnit = keyof typeof LENGTH_UNITS;

/** Which column of a foreign table holds what. A person may correct it. */
export interface ColumnMapping {
  /** Column by field, from 0. */
  readonly columns: Readonly<Partial<Record<PlacementField, number>>>;
  /** Rows at the top that hold no part. */
  readonly headerRows: number;
  readonly unit: LengthUnit;
}

export interface GuessedColumns {
  readonly mapping: ColumnMapping;
  /** By field, whether the name of the column told it, or what stands in it. */
  readonly told: Readonly<Partial<Record<PlacementField, 'name' | 'content'>>>;
  /** Fields that a placement needs and no column seems to hold. */
  readonly missing: readonly PlacementField[];
}

/** Names of columns as such tables have them, without spaces, signs and units. Common practice, no source. */
const NAMES: Readonly<Record<PlacementField, RegExp>> = {
  ref: /^(?:ref|refs|refdes|reference|references|designator|designators|component|partref|name)$/,
  x: /^(?:x|posx|xpos|midx|centerx|centrex|locationx|xlocation|positionx|xposition|refx|xcoord|xcenter)$/,
  y: /^(?:y|posy|ypos|midy|centery|centrey|locationy|ylocation|positiony|yposition|refy|ycoord|ycenter)$/,
  rotation: /^(?:rot|rotation|angle|orientation|turn|theta)$/,
  side: /^(?:side|layer|face|tb|boardside|mountside|surface)$/,
  value: /^(?:val|value|comment|partvalue|marking)$/,
  package: /^(?:package|footprint|pattern|landpattern|case|body|outline)$/,
  block: /^(?:block|group|section|function)$/,
  nets: /^(?:net|nets|nodes|netlist)$/,
};
const REF = /^[A-Za-z]{1,3}[0-9]{1,4}[A-Za-z]?$/;
const NUMBER = /^[-+]?\d+(?:[.,]\d+)?\s*(?:mm|um|µm|mil|in|inch|")?$/i;
const SIDES: Readonly<Record<string, 'front' | 'back' | 'off'>> = {
  front: 'front',
  top: 'front',
  t: 'front',
  f: 'front',
  toplayer: 'front',
  topside: 'front',
  back: 'back',
  bottom: 'back',
  b: 'back',
  bot: 'back',
  bottomlayer: 'back',
  bottomside: 'back',
  off: 'off',
};
const NEEDED: readonly PlacementField[] = ['ref', 'x', 'y'];
/** Above this share of the cells of a column it is of a kind. */
const MOSTLY = 0.8;
/** Rows that are looked at. */
const LOOKED_AT = 200;

/** The side that a word means; null for none. */
export const sideOf = (text: string): 'front' | 'back' | 'off' | null => SIDES[text.toLowerCase().replace(/[^a-z]/g, '')] ?? null;

/**
 * Guesses which column of a table of places holds what: by the name of the column where one is known, else by what stands in it (references, sides, and
 * of columns of numbers x, y and rotation, in this order). The unit is that of the names or of the cells; without one it is mm.
 */
export function guessColumns(rows: readonly (readonly string[])[]): GuessedColumns {
  const header = rows.findIndex((cells) => cells.filter((cell) => fieldNamed(cell) !== null).length >= 2);
  const headerRows = header + 1;
  const columns: Partial<Record<PlacementField, number>> = {};
  const told: Partial<Record<PlacementField, 'name' | 'content'>> = {};
  rows[header]?.forEach((cell, column) => {
    const field = fieldNamed(cell);
    if (!field || columns[field] !== undefined) return;
    [columns[field], told[field]] = [column, 'name'];
  });
  const body = rows.slice(headerRows, headerRows + LOOKED_AT);
  for (const [field, column] of byContent(body, new Set(Object.values(columns)), columns))
    [columns[field], told[field]] = [column, 'content'];
  const unit = unitOf(rows[header] ?? [], body, columns);
  return { mapping: { columns, headerRows, unit }, told, missing: NEEDED.filter((field) => columns[field] === undefined) };
}

function fieldNamed(cell: string): PlacementField | null {
  const plain = cell
    .toLowerCase()
    .replace(/[([{].*$/, '')
    .replace(/[^a-z]/g, '');
  const bare = plain.replace(/(?:mm|mils?|inch|um|deg|degrees)$/, '');
  return PLACEMENT_FIELDS.find((field) => NAMES[field].test(plain) || NAMES[field].test(bare)) ?? null;
}

function byContent(
  body: readonly (readonly string[])[],
  used: ReadonlySet<number>,
  known: Readonly<Partial<Record<PlacementField, number>>>,
): [PlacementField, number][] {
  const width = Math.max(0, ...body.map(({ length }) => length));
  const free = Array.from({ length: width }, (_, column) => column).filter((column) => !used.has(column));
  const mostly = (column: number, holds: (cell: string) => boolean): boolean => {
    const cells = body.map((row) => row[column]?.trim() ?? '').filter((cell) => cell !== '');
    return cells.length > 0 && cells.filter(holds).length >= MOSTLY * cells.length;
  };
  const found: [PlacementField, number][] = [];
  const take = (field: PlacementField, holds: (cell: string) => boolean): void => {
    if (known[field] !== undefined) return;
    const column = free.find((each) => !found.some(([, taken]) => taken === each) && mostly(each, holds));
    if (column !== undefined) found.push([field, column]);
  };
  take('ref', (cell) => REF.test(cell));
  take('side', (cell) => sideOf(cell) !== null);
  for (const field of ['x', 'y', 'rotation'] as const) take(field, (cell) => NUMBER.test(cell));
  return found;
}

function unitOf(
  header: readonly string[],
  body: readonly (readonly string[])[],
  { x, y }: Readonly<Partial<Record<PlacementField, number>>>,
): LengthUnit {
  const columns = [x, y].filter((column) => column !== undefined);
  const cells = columns.flatMap((column) => [header[column] ?? '', ...body.slice(0, 20).map((row) => row[column] ?? '')]);
  for (const cell of cells) {
    const unit = lengthUnitIn(cell);
    if (unit) return unit;
  }
  return 'mm';
}

/** The unit of length that is written at the end of a cell or in brackets; null for none. */
export function lengthUnitIn(cell: string): LengthUnit | null {
  const [, word] = /(?:^|[\s\d([{_-])(mm|um|µm|mils?|in|inch|inches)[)\]}]?\s*$/i.exec(cell) ?? (/"\s*$/.test(cell) ? ['', 'inch'] : []);
  if (word === undefined) return null;
  const plain = word.toLowerCase();
  return plain === 'mm' ? 'mm' : plain.startsWith('mil') ? 'mil' : plain === 'um' || plain === 'µm' ? 'um' : 'inch';
}
