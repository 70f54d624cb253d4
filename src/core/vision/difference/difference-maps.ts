import { boxBlur, gaussianBlur } from '../image/blur.ts';
import type { Picture } from '../image/picture.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { excess } from './excess.ts';
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

/**
 * The difference maps of `other` against one or several `references`, all in one frame and one light. With several, only what differs from every one of them
 * counts, less what they differ among themselves there.
 */
export function differenceMaps(references: readonly Picture[], other: Picture, valid: Uint8Array): DifferenceMaps {
  const [first, ...more] = references as [Picture, ...Picture[]];
  const beyond = [1, 2, 3].map((radius) => leastExcess(first.grey, more, other.grey, radius)) as [Plane, Plane, Plane];
  const raw = planeOf(first.grey.width, first.grey.height);
  for (let i = 0; i < raw.data.length; i++) raw.data[i] = other.grey.data[i]! - first.grey.data[i]!;
  const cells = references.map(({ grey }) => orientationCells(grey, CELL_PX));
  const seen = orientationCells(other.grey, CELL_PX);
  const wentFrom = cells.map((each) => unexplained(each, [seen]));
  return {
    width: raw.width,
    height: raw.height,
    raw,
    beyond,
    colour: colourExcess(references, other),
    cellPx: CELL_PX,
    went: leastOf(wentFrom),
    came: unexplained(seen, cells),
    reference: first.grey,
    other: other.grey,
    coloured: other.coloured && first.coloured,
    valid,
  };
}

function leastExcess(first: Plane, more: readonly Picture[], other: Plane, radius: number): Plane {
  let least = excess(first, other, radius);
  for (const { grey } of more) {
    const against = excess(grey, other, radius);
    const among = boxBlur(magnitude(excess(first, grey, radius)), 2);
    least = {
      ...least,
      data: least.data.map((value, i) => {
        const smaller = Math.abs(against.data[i]!) < Math.abs(value) ? against.data[i]! : value;
        return Math.sign(smaller) * Math.max(0, Math.abs(smaller) - among.data[i]!);
      }),
    };
  }
  return least;
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
  const distances = references.map((reference) => {
    const by = excess(gaussianBlur(reference.yellowBlue, 1), gaussianBlur(other.yellowBlue, 1), 2).data;
    const rg = excess(gaussianBlur(reference.redGreen, 1), gaussianBlur(other.redGreen, 1), 2).data;
    return by.map((value, i) => Math.hypot(value, rg[i]!));
  });
  for (let i = 0; i < least.data.length; i++) least.data[i] = Math.min(...distances.map((d) => d[i]!));
  return least;
}
