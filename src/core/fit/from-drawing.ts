import { FitError } from './fit-error.ts';
import type { FootDrawing, Range } from './land-size.ts';
import { PLAIN_PAD, UNKNOWN, type Pad, type PartKind, type Pattern } from './pattern.ts';
import { turnPoint } from './turn.ts';

/** A part as its drawing gives it: so many feet on each of so many sides. */
export interface PartDrawing extends FootDrawing {
  readonly name: string;
  readonly kind: PartKind;
  readonly sides: 1 | 2 | 4;
  readonly pins: number;
  readonly pitchMm: number;
  readonly heightMm: number | null;
}

/** More pins than any part that is soldered by hand. */
const MOST_PINS = 2000;

const middle = ([least, most]: Range): number => (least + most) / 2;

/**
 * The feet of a part in the middle of the limits of its drawing, as a pattern about its middle. Pin 1 is at the upper left and they count against the clock; of one
 * side from left to right at the lower edge. Throws `bad-count` when the pins do not share out over the sides, `bad-size` for a size that is not above zero.
 */
export function partFromDrawing(drawing: PartDrawing): Pattern {
  const { name, kind, sides, pins, pitchMm, heightMm } = drawing;
  const each = pins / sides;
  if (!(pins > 0 && pins <= MOST_PINS && Number.isInteger(each)))
    throw new FitError('bad-count', `${pins} pins do not share out over ${sides} sides`);
  const sizes = [drawing.spanMm, drawing.footMm, drawing.widthMm].flat();
  if (sizes.some((size) => !(size > 0)) || (each > 1 && !(pitchMm > 0)))
    throw new FitError('bad-size', 'every size of a drawing is above zero');
  const turns = sides === 4 ? [0, 90, 180, 270] : sides === 2 ? [0, 180] : [90];
  const pads = turns.flatMap((turnDeg, side) =>
    Array.from({ length: each }, (_, i) => foot(drawing, side * each + i + 1, (i - (each - 1) / 2) * pitchMm, turnDeg)),
  );
  return { ...UNKNOWN, name, kind, basis: 'feet', numbered: true, heightMm, pads };
}

/** A foot of the left side, `down` from its middle, turned to its own side. */
function foot({ spanMm, footMm, widthMm }: PartDrawing, pin: number, down: number, turnDeg: number): Pad {
  const [xMm, yMm] = turnPoint([(middle(footMm) - middle(spanMm)) / 2, -down], turnDeg);
  return { ...PLAIN_PAD, name: String(pin), xMm, yMm, wMm: middle(footMm), hMm: middle(widthMm), turnDeg };
}
