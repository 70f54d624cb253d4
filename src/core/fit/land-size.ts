import { FitError } from './fit-error.ts';
import { GOALS, LEVELS, type Family, type Fillets, type Level } from './goals.ts';

/** Least and most of a dimension of a drawing, mm. */
export type Range = readonly [least: number, most: number];

/** The dimensions of a part with feet on two opposite sides: over the feet, of one foot along and across. */
export interface FootDrawing {
  readonly spanMm: Range;
  readonly footMm: Range;
  readonly widthMm: Range;
}

/** What making and placing add, mm: error of the board and of placing (IPC-7351B's usual 0.10 and 0.05; from memory). */
export const TOLERANCES = { boardMm: 0.1, placingMm: 0.05 } as const;

export interface LandSize {
  /** Over the two lands. */
  readonly outerMm: number;
  /** Between them. */
  readonly innerMm: number;
  readonly acrossMm: number;
}

const width = ([least, most]: Range): number => most - least;

/** The gap between the feet: least and most, with the root of squares in place of the plain sum. */
function gap({ spanMm, footMm }: FootDrawing) {
  const toleranceMm = Math.hypot(width(spanMm), Math.SQRT2 * width(footMm)); // CS rms = √(CL² + 2·CT²)
  const [least, most] = [spanMm[0] - 2 * footMm[1], spanMm[1] - 2 * footMm[0]];
  const tooMuch = (most - least - toleranceMm) / 2;
  return { toleranceMm, mostMm: most - tooMuch };
}

/**
 * The lands that a part wants at a level of fillets, mm, not rounded. Throws `bad-size` when a range is upside down.
 * Source: IPC-7351B section 3 (from memory): Z = Lmin + 2·Jt + √(CL²+F²+P²), G = Smax − 2·Jh − √(CS²+F²+P²),
 * X = Wmin + 2·Js + √(CW²+F²+P²).
 */
export function landSize(drawing: FootDrawing, family: Family, level: Level): LandSize {
  for (const [name, range] of Object.entries(drawing) as [string, Range][])
    if (!(range[0] > 0 && range[1] >= range[0])) throw new FitError('bad-size', `${name} must be a least and a most above zero`);
  const at = LEVELS.indexOf(level);
  const { toeMm, heelMm, sideMm } = GOALS[family];
  const made = Math.hypot(TOLERANCES.boardMm, TOLERANCES.placingMm);
  const { toleranceMm, mostMm } = gap(drawing);
  return {
    outerMm: drawing.spanMm[0] + 2 * toeMm[at]! + Math.hypot(width(drawing.spanMm), made),
    innerMm: mostMm - 2 * heelMm[at]! - Math.hypot(toleranceMm, made),
    acrossMm: drawing.widthMm[0] + 2 * sideMm[at]! + Math.hypot(width(drawing.widthMm), made),
  };
}

/** To the grid on which lands are drawn (0.05 mm; from memory). */
export const onGrid = (mm: number): number => Math.round(mm * 20) / 20;

/** The fillets that nominal feet get on given lands, the inverse of `landSize`: Jt = (Z−L)/2, Jh = (S−G)/2, Js = (X−W)/2. */
export function filletsOn(lands: LandSize, drawing: FootDrawing): Fillets {
  const middle = ([least, most]: Range): number => (least + most) / 2;
  const span = middle(drawing.spanMm);
  return {
    toeMm: (lands.outerMm - span) / 2,
    heelMm: (span - 2 * middle(drawing.footMm) - lands.innerMm) / 2,
    sideMm: (lands.acrossMm - middle(drawing.widthMm)) / 2,
  };
}
