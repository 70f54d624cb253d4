import type { Alignment } from '../align/align.ts';
import type { Displacement } from '../align/displacement.ts';
import { insideOf, laidOn, pixelMapOf } from '../align/laid-on.ts';
import { FLOW, smoothFlow } from '../align/smooth-flow.ts';
import type { Picture } from '../image/picture.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { inLightOf } from './match-light.ts';

/** Another picture as it lies on the reference, in its light; `valid` where both are seen. */
export interface Laid {
  readonly picture: Picture;
  /** Its grey in its own light. */
  readonly asItCame: Plane;
  readonly valid: Uint8Array;
  readonly displacement: Displacement;
}

const BORDER_PX = 3;

/** Lays an aligned picture on the reference: first by the alignment, then, in the same light, by what displacement is still left at full size. */
export function layTogether(reference: Picture, other: Picture, alignment: Alignment): Laid {
  const { width, height } = reference.grey;
  const first = laidOn(pixelMapOf(alignment.h, alignment.displacement, width, height), { ...other, coloured: false });
  const left = smoothFlow(reference.grey, inLightOf(reference.grey, first.grey), { ...FLOW, halvings: 1, rounds: 2 });
  const displacement = summed(alignment.displacement, left);
  const map = pixelMapOf(alignment.h, displacement, width, height);
  const laid = laidOn(map, other);
  const valid = insideOf(map, other.grey.width, other.grey.height, BORDER_PX);
  return { picture: inLight(reference, laid), asItCame: laid.grey, valid, displacement };
}

/** A picture in the light of the reference, plane by plane. */
function inLight(reference: Picture, laid: Picture): Picture {
  const grey = inLightOf(reference.grey, laid.grey);
  if (!reference.coloured || !laid.coloured) return { ...laid, grey };
  return {
    grey,
    yellowBlue: inLightOf(reference.yellowBlue, laid.yellowBlue),
    redGreen: inLightOf(reference.redGreen, laid.redGreen),
    coloured: true,
  };
}

/** Two displacements one after the other; small enough that their sum will do. */
function summed(a: Displacement, b: Displacement): Displacement {
  const plus = (p: Plane, q: Plane): Plane => {
    const out = planeOf(p.width, p.height);
    for (let i = 0; i < out.data.length; i++) out.data[i] = p.data[i]! + q.data[i]!;
    return out;
  };
  return { step: a.step, dx: plus(a.dx, b.dx), dy: plus(a.dy, b.dy) };
}
