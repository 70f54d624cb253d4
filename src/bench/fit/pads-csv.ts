import { PLAIN_PAD, UNKNOWN, type Pad, type Pattern } from '../../core/fit/index.ts';
import { csvText } from '../csv/csv-text.ts';
import { csvTable, numberIn, wordIn, type BadCell, type CellsOf, type CsvLine, type CsvProblem } from '../csv/csv-table.ts';

export const PAD_COLUMNS = [
  'pin',
  'x_mm',
  'y_mm',
  'w_mm',
  'h_mm',
  'kind',
  'shape',
  'turn_deg',
  'corner_mm',
  'drill_w_mm',
  'drill_h_mm',
  'net',
  'side',
] as const;
type Column = (typeof PAD_COLUMNS)[number];
/** One pad and its net, from one line of a table. */
export interface PadLine {
  readonly pad: Pad;
  readonly net: string;
}
export type AboutPads = Pick<Pattern, 'name' | 'kind' | 'basis'>;

const KINDS: Readonly<Record<string, Pad['kind']>> = { '': 'surface', surface: 'surface', through: 'through', peg: 'peg' };
const SHAPES: Readonly<Record<string, Pad['shape']>> = {
  '': 'rect',
  rect: 'rect',
  'round-rect': 'round-rect',
  oval: 'oval',
  circle: 'circle',
};
const SIDES: Readonly<Record<string, Pad['side']>> = { '': 'front', front: 'front', back: 'back' };

/** A pattern and what is wrong with its table; there is no pattern while anything is. */
export interface PadsRead {
  readonly pattern: Pattern | null;
  readonly problems: readonly CsvProblem[];
}

/**
 * A land pattern, or the feet of a part, from a table of pads: pin, place and size in mm with y up, and as wanted kind (surface, through, peg), shape (rect, round-rect, oval, circle), turn against the
 * clock, corner, hole, net and side. A table in which every pad has a pin is taken as numbered.
 */
export function patternFromCsv(lines: readonly CsvLine[], about: AboutPads): PadsRead {
  const { rows, problems } = csvTable(lines, { columns: PAD_COLUMNS, needed: 5, read: padRow });
  return { pattern: problems.length > 0 ? null : patternOfLines(rows, about), problems };
}

/** The pattern of the lines of one part, numbered when every pad has a pin. */
export function patternOfLines(lines: readonly PadLine[], about: AboutPads): Pattern {
  const pads = lines.map(({ pad }) => pad);
  const nets = Object.fromEntries(lines.flatMap(({ pad, net }) => (net === '' ? [] : [[pad.name, net]])));
  const numbered = pads.every(({ kind, name }) => kind === 'peg' || !name.startsWith('#'));
  return { ...UNKNOWN, ...about, nets, numbered, pads };
}

/** The pad of one line, or what is wrong with it. */
export function padRow(cells: CellsOf<Column>, line: number): PadLine | BadCell {
  const kind = wordIn('kind', cells.kind, KINDS);
  const shape = wordIn('shape', cells.shape, SHAPES);
  const side = wordIn('side', cells.side, SIDES);
  for (const each of [kind, shape, side]) if (typeof each === 'object') return each;
  const numbers: Record<string, number> = {};
  for (const field of ['x_mm', 'y_mm', 'w_mm', 'h_mm', 'turn_deg', 'corner_mm', 'drill_w_mm', 'drill_h_mm'] as const) {
    const value = numberIn(
      field,
      cells[field],
      /^(turn|corner|drill)/.test(field) ? 0 : null,
      field === 'turn_deg' ? 'degrees' : 'millimetres',
    );
    if (typeof value !== 'number') return value;
    numbers[field] = value;
  }
  const bad = sizeProblem(numbers, kind as Pad['kind']);
  if (bad) return bad;
  const { x_mm: xMm, y_mm: yMm, w_mm: wMm, h_mm: hMm, turn_deg: turnDeg, corner_mm: cornerMm } = numbers as Record<string, number>;
  const own = { kind, shape, side, xMm, yMm, wMm, hMm, turnDeg, cornerMm } as Omit<Pad, 'name' | 'drill' | 'rings'>;
  const name = cells.pin.trim() || (kind === 'peg' ? '' : `#${line}`);
  return { pad: { ...PLAIN_PAD, ...own, name, drill: holeOf(numbers, kind as Pad['kind']) }, net: cells.net.trim() };
}

function sizeProblem(numbers: Readonly<Record<string, number>>, kind: Pad['kind']): BadCell | undefined {
  const next = 'Measure it again, in mm.';
  for (const field of ['w_mm', 'h_mm']) if (!(numbers[field]! > 0)) return { field, message: 'is not above zero', next };
  if (kind === 'through' && !(numbers.drill_w_mm! > 0))
    return { field: 'drill_w_mm', message: 'is not given for a pad with a hole', next: 'Give the size of the hole, in mm.' };
  return undefined;
}

/** A peg without a size of its hole fills it. */
function holeOf(
  { drill_w_mm: w, drill_h_mm: h, w_mm: padW, h_mm: padH }: Readonly<Record<string, number>>,
  kind: Pad['kind'],
): Pad['drill'] {
  if (kind === 'surface') return null;
  const wMm = w || padW!;
  return { wMm, hMm: h || (w ? w : padH!), dxMm: 0, dyMm: 0 };
}

const rounded = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;

/** A pattern as a table that `patternFromCsv` reads; outlines become their boxes, and holes lie in the middle of their pads. */
export const padsCsv = (pattern: Pattern): string =>
  csvText(
    PAD_COLUMNS,
    pattern.pads.map((pad) => {
      const sizes = [pad.xMm, pad.yMm, pad.wMm, pad.hMm].map(rounded);
      const drill = pad.drill ? [pad.drill.wMm, pad.drill.hMm].map(rounded) : [null, null];
      const shape = pad.shape === 'outline' ? 'rect' : pad.shape;
      const name = pad.name.startsWith('#') ? '' : pad.name;
      return [
        name,
        ...sizes,
        pad.kind,
        shape,
        rounded(pad.turnDeg),
        rounded(pad.cornerMm),
        ...drill,
        pattern.nets[pad.name] ?? '',
        pad.side,
      ];
    }),
  );
