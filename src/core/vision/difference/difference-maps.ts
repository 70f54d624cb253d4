import { boxBlur, gaussianBlur } from '../image/blur.ts';
import type { Picture } from '../image/picture.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { excessAt, excesses } from './excess.ts';
import { orientationCells, unexplained } from './orientation-cells.ts';

/** All the ways in which a picture differs from its references, in the frame of the first of them. */
export interface DifferenceMaps {
  readonly width: number;
  readonly height: number;
  /** Other minus reference, as they lie. */
  readonly raw: Plane;
  /** Beyond a shift of 1, 2 and 3 px, signed as other minus reference. */
  readonly beyond: readonly [Plane, Plane, Plane];
  /** Distance in the two opponent colours beyond a shift of 2 px, after a little smoothing; not negative. */
  readonly colour: Plane;
  /** Other minus reference in the two opponent colours, as they lie. */
  readonly yellowBlue: Plane;
  readonly redGreen: Plane;
  /** Edges that are in one picture only, in cells of `cellPx`: in the reference (went), in the other (came). */
  readonly cellPx: number;
  readonly went: Plane;
  readonly came: Plane;
  /** Grey of the first reference and of the other. */
  readonly reference: Plane;
  readonly other: Plane;
  readonly coloured: boolean;
  /** 1 where both pictures show the place. */
  readonly valid: Uint8Array;
}

const CELL_PX = 8;
const COLOUR_SHIFT_PX = 2;

/**
 * The difference maps of `other` against one or several `references`, all in one frame and one light. With several, only what differs from every one of them
 * counts, less what they differ among themselves there.
 */
export function differenceMaps(references: readonly Picture[], other: Picture, valid: Uint8Array): DifferenceMaps {
  const [first, ...more] = references as [Picture, ...Picture[]];
  const beyond = leastExcesses(first.grey, more, other.grey) as [Plane, Plane, Plane];
  const raw = lessThan(other.grey, first.grey);
  const cells = references.map(({ grey }) => orientationCells(grey, CELL_PX));
  const seen = orientationCells(other.grey, CELL_PX);
  const wentFrom = cells.map((each) => unexplained(each, [seen]));
  return {
    width: raw.width,
    height: raw.height,
    raw,
    beyond,
    colour: colourExcess(references, other),
    yellowBlue: lessThan(other.yellowBlue, first.yellowBlue),
    redGreen: lessThan(other.redGreen, first.redGreen),
    cellPx: CELL_PX,
    went: leastOf(wentFrom),
    came: unexplained(seen, cells),
    reference: first.grey,
    other: other.grey,
    coloured: other.coloured && first.coloured,
    valid,
  };
}

function lessThan(a: Plane, b: Plane): Plane {
  const out = planeOf(a.width, a.height);
  for (let i = 0; i < out.data.length; i++) out.data[i] = a.data[i]! - b.data[i]!;
  return out;
}

function leastExcesses(first: Plane, more: readonly Picture[], other: Plane): Plane[] {
  let least = excesses(first, other, 3);
  for (const { grey } of more) {
    const against = excesses(grey, other, 3);
    const among = excesses(first, grey, 3).map((plane) => boxBlur(magnitude(plane), 2));
    least = least.map((plane, k) => lessVariation(plane, against[k]!, among[k]!));
  }
  return least;
}

/** The smaller of two differences at each place, less how much the references differ there. */
function lessVariation(a: Plane, b: Plane, among: Plane): Plane {
  const data = a.data.map((value, i) => {
    const smaller = Math.abs(b.data[i]!) < Math.abs(value) ? b.data[i]! : value;
    return Math.sign(smaller) * Math.max(0, Math.abs(smaller) - among.data[i]!);
  });
  return { ...a, data };
}

const magnitude = (plane: Plane): Plane => ({ ...plane, data: plane.data.map(Math.abs) });

function leastOf(planes: readonly Plane[]): Plane {
  const out = planeOf(planes[0]!.width, planes[0]!.height);
  for (let i = 0; i < out.data.length; i++) out.data[i] = Math.min(...planes.map(({ data }) => data[i]!));
  return out;
}

function colourExcess(references: readonly Picture[], other: Picture): Plane {
  const least = planeOf(other.grey.width, other.grey.height);
  if (!other.coloured || !references.every(({ coloured }) => coloured)) return least;
  least.data.fill(Infinity);
  const [otherBy, otherRg] = [gaussianBlur(other.yellowBlue, 1), gaussianBlur(other.redGreen, 1)];
  for (const reference of references) {
    const by = excessAt(gaussianBlur(reference.yellowBlue, 1), otherBy, COLOUR_SHIFT_PX).data;
    const rg = excessAt(gaussianBlur(reference.redGreen, 1), otherRg, COLOUR_SHIFT_PX).data;
    for (let i = 0; i < by.length; i++) least.data[i] = Math.min(least.data[i]!, Math.sqrt(by[i]! * by[i]! + rg[i]! * rg[i]!));
  }
  return least;
}
