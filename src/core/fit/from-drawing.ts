import { LIMITS } from './answer.ts';
import { FitError } from './fit-error.ts';
import type { FootDrawing, Range } from './land-size.ts';
import { PLAIN_PAD, UNKNOWN, type Pad, type PartKind, type Pattern } from './pattern.ts';
import { turnPoint } from './turn.ts';

/** Pegs of a part that go into bare holes: along its first row of feet, in the middle of it. */
export interface DrawnPegs {
  readonly count: 1 | 2;
  /** From the middle of one to that of the other; of no account for one. */
  readonly apartMm: number;
  /** From the middles of the first row of feet towards the middle of the part. */
  readonly inwardMm: number;
  readonly sizeMm: number;
}

/** A part as its drawing gives it: so many feet on each of so many sides. */
export interface PartDrawing extends FootDrawing {
  readonly name: string;
  readonly kind: PartKind;
  readonly sides: 1 | 2 | 4;
  readonly pins: number;
  readonly pitchMm: number;
  readonly heightMm: number | null;
  /** Thickness of legs that go through the board; null for feet that lie on it. With legs the span is from row to row, middle to middle, and foot and width are of no account. */
  readonly legMm: number | null;
  readonly pegs: DrawnPegs | null;
}

/** More pins than any part that is soldered by hand. */
const MOST_PINS = 2000;

const middle = ([least, most]: Range): number => (least + most) / 2;

/** What lies on each side before it is turned there: how far out it is in the middle, its length and its width. */
interface Foot {
  readonly outMm: number;
  readonly longMm: number;
  readonly wideMm: number;
}

/**
 * The feet, or legs, and the pegs of a part in the middle of the limits of its drawing, as a pattern about its middle. Pin 1 is at the upper left and they count against the clock; of one
 * side from left to right at the lower edge. Throws `bad-count` when the pins do not share out over the sides, `bad-size` for a size that is not above zero.
 */
export function partFromDrawing(drawing: PartDrawing): Pattern {
  const { name, kind, sides, pins, pitchMm, heightMm, pegs } = drawing;
  const each = pins / sides;
  if (!(pins > 0 && pins <= MOST_PINS && Number.isInteger(each)))
    throw new FitError('bad-count', `${pins} pins do not share out over ${sides} sides`);
  if (sizesOf(drawing).some((size) => !(size > 0)) || (each > 1 && !(pitchMm > 0)))
    throw new FitError('bad-size', 'every size of a drawing is above zero');
  if ([drawing.spanMm, drawing.footMm, drawing.widthMm].some(([least, most]) => most < least))
    throw new FitError('bad-size', 'the largest of a size is not below its smallest');
  const foot = footOf(drawing);
  const turns = sides === 4 ? [0, 90, 180, 270] : sides === 2 ? [0, 180] : [90];
  const pads = turns.flatMap((turnDeg, side) =>
    Array.from({ length: each }, (_, i) => footPad(drawing, foot, side * each + i + 1, (i - (each - 1) / 2) * pitchMm, turnDeg)),
  );
  const all = pegs ? [...pads, ...pegPads(pegs, foot, turns[0]!)] : pads;
  return { ...UNKNOWN, name, kind, basis: 'feet', numbered: true, heightMm, pads: all };
}

const sizesOf = ({ spanMm, footMm, widthMm, legMm, pegs }: PartDrawing): number[] => [
  ...spanMm,
  ...(legMm === null ? [...footMm, ...widthMm] : [legMm]),
  ...(pegs ? [pegs.sizeMm, ...(pegs.count === 2 ? [pegs.apartMm] : [])] : []),
];

function footOf({ spanMm, footMm, widthMm, legMm }: PartDrawing): Foot {
  if (legMm !== null) return { outMm: middle(spanMm) / 2, longMm: legMm, wideMm: legMm };
  return { outMm: (middle(spanMm) - middle(footMm)) / 2, longMm: middle(footMm), wideMm: middle(widthMm) };
}

/** A foot of the left side, `down` from its middle, turned to its own side. A leg asks for a hole with its play. */
function footPad({ legMm }: PartDrawing, { outMm, longMm, wideMm }: Foot, pin: number, down: number, turnDeg: number): Pad {
  const [xMm, yMm] = turnPoint([-outMm, -down], turnDeg);
  const foot = { ...PLAIN_PAD, name: String(pin), xMm, yMm, wMm: longMm, hMm: wideMm, turnDeg };
  if (legMm === null) return foot;
  return { ...foot, kind: 'through', shape: 'circle', drill: hole(legMm + LIMITS.legTighterMm) };
}

function pegPads({ count, apartMm, inwardMm, sizeMm }: DrawnPegs, { outMm }: Foot, turnDeg: number): Pad[] {
  const along = count === 1 ? [0] : [apartMm / 2, -apartMm / 2];
  const asked = sizeMm + LIMITS.pegTighterMm;
  return along.map((up): Pad => {
    const [xMm, yMm] = turnPoint([inwardMm - outMm, up], turnDeg);
    return { ...PLAIN_PAD, name: '', kind: 'peg', shape: 'circle', xMm, yMm, wMm: asked, hMm: asked, drill: hole(asked) };
  });
}

const hole = (mm: number): Pad['drill'] => ({ wMm: mm, hMm: mm, dxMm: 0, dyMm: 0 });
