import { FitError, partFromDrawing, type DrawnPegs, type PartDrawing } from '../../core/fit/index.ts';
import { numberIn, type BadCell, type CellsOf } from '../csv/csv-table.ts';
import { nameIn, offerIn, OFFER_COLUMNS, type ListedPart } from './listed-part.ts';
import { TOLD_COLUMNS, toldIn, withTold, type Told } from './told.ts';

export const DRAWING_COLUMNS = [
  'part',
  'sides',
  'pins',
  'pitch_mm',
  'span_min_mm',
  'span_max_mm',
  'foot_min_mm',
  'foot_max_mm',
  'width_min_mm',
  'width_max_mm',
  'leg_mm',
  'pegs',
  'peg_mm',
  'pegs_apart_mm',
  'pegs_inward_mm',
  ...TOLD_COLUMNS,
  ...OFFER_COLUMNS,
] as const;
export const NEEDED_OF_DRAWING = 5;

type Cells = CellsOf<(typeof DRAWING_COLUMNS)[number]>;
type Field =
  'sides' | 'pins' | 'pitch_mm' | 'leg_mm' | 'pegs' | 'peg_mm' | 'pegs_apart_mm' | 'pegs_inward_mm' | `${Size}_${'min' | 'max'}_mm`;
type Size = 'span' | 'foot' | 'width';
type Numbers = Readonly<Record<Field, number>>;

/** In this order, since the largest of a size falls back on its smallest. Zero where a cell may be empty: it is told by what is made of it. */
const FIELDS: readonly (readonly [field: Field, fallback: number | Field | null])[] = [
  ['sides', null],
  ['pins', null],
  ['pitch_mm', 0],
  ['span_min_mm', null],
  ['span_max_mm', 'span_min_mm'],
  ['foot_min_mm', 0],
  ['foot_max_mm', 'foot_min_mm'],
  ['width_min_mm', 0],
  ['width_max_mm', 'width_min_mm'],
  ['leg_mm', 0],
  ['pegs', 0],
  ['peg_mm', 0],
  ['pegs_apart_mm', 0],
  ['pegs_inward_mm', 0],
];

/** A part from one line of a list, by the numbers of its drawing, or what is wrong with the line. */
export function drawnPart(cells: Cells): ListedPart | BadCell {
  const name = nameIn(cells.part);
  if (typeof name !== 'string') return name;
  const told = toldIn(cells);
  if ('message' in told) return told;
  const numbers: Partial<Record<Field, number>> = {};
  for (const [field, fallback] of FIELDS) {
    const whole = typeof fallback === 'string' ? numbers[fallback]! : fallback;
    const value = numberIn(field, cells[field], whole, field.endsWith('_mm') ? 'millimetres' : 'a whole number');
    if (typeof value !== 'number') return value;
    numbers[field] = value;
  }
  return countProblem(numbers as Numbers) ?? madeFrom(name, numbers as Numbers, told, cells);
}

function countProblem({ sides, pegs }: Numbers): BadCell | undefined {
  if (![1, 2, 4].includes(sides)) return { field: 'sides', message: 'is none of 1, 2, 4', next: 'Give on how many sides it has feet.' };
  return [0, 1, 2].includes(pegs) ? undefined : { field: 'pegs', message: 'is none of 0, 1, 2', next: 'Give how many pegs it has.' };
}

function madeFrom(name: string, numbers: Numbers, told: Told, cells: Cells): ListedPart | BadCell {
  try {
    return { name, ...offerIn(cells), pattern: withTold(partFromDrawing(drawingOf(name, numbers, told)), told) };
  } catch (trouble) {
    if (!(trouble instanceof FitError)) throw trouble;
    return { field: 'part', message: `"${name}" cannot be drawn: ${trouble.message}`, next: 'Look at its drawing again.' };
  }
}

function drawingOf(name: string, numbers: Numbers, told: Told): PartDrawing {
  const range = (size: Size) => [numbers[`${size}_min_mm`], numbers[`${size}_max_mm`]] as const;
  const pegs = { apartMm: numbers.pegs_apart_mm, inwardMm: numbers.pegs_inward_mm, sizeMm: numbers.peg_mm };
  return {
    name,
    kind: told.kind ?? (numbers.leg_mm > 0 ? 'legs' : 'other'),
    sides: numbers.sides as PartDrawing['sides'],
    pins: numbers.pins,
    pitchMm: numbers.pitch_mm,
    spanMm: range('span'),
    footMm: range('foot'),
    widthMm: range('width'),
    heightMm: told.heightMm,
    legMm: numbers.leg_mm > 0 ? numbers.leg_mm : null,
    pegs: numbers.pegs === 0 ? null : { count: numbers.pegs as DrawnPegs['count'], ...pegs },
  };
}
