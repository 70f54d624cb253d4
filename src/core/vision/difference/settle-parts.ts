import { eachPlane, type Picture } from '../image/picture.ts';
import type { Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';
import { findPatch, isWithinUsualShift, USUAL_SHIFT, type PartPatch, type PatchFit } from './part-patch.ts';

/** A known part and how it was found again in the other picture. */
export interface FoundPart {
  readonly part: PartPatch;
  readonly fit: PatchFit;
}

/** A part as good as this, and turned by less, is the same part; it is settled where it better fits by as much. */
const SAME_PART = 0.7;
const SAME_TURN_DEG = 5;
const WORTH = 0.02;
/** Over so many px beside a part its shift fades out. */
const FADE_PX = 4;
const MOST_SEARCH_PX = 36;

/** Every known part looked for in `other`, around where it lies in the reference. */
export const foundParts = (reference: Plane, other: Plane, parts: readonly PartPatch[]): FoundPart[] =>
  parts.map((part) => ({ part, fit: findPatch(reference, other, part, searchOf(part)) }));

const searchOf = ({ widthPx, heightPx }: PartPatch): number =>
  Math.ceil(Math.min(MOST_SEARCH_PX, USUAL_SHIFT * Math.min(widthPx, heightPx) + 6));

/**
 * The other picture with every part that is merely seen from another side put back to where it lies in the reference, the tallest shifts first: what is left of a
 * tall part then is what truly differs in it. Parts that are turned, too far away or not found stay as they are.
 */
export function settled(other: Picture, found: readonly FoundPart[]): Picture {
  const moves = found
    .filter(
      ({ part, fit }) =>
        fit.best > SAME_PART && fit.best > fit.asItLies + WORTH && Math.abs(fit.turnDeg) < SAME_TURN_DEG && isWithinUsualShift(fit, part),
    )
    .sort((a, b) => areaOf(b.part) - areaOf(a.part));
  return eachPlane(other, (plane) =>
    moves.reduce<Plane>((into, move) => putBack(into, plane, move), { ...plane, data: plane.data.slice() }),
  );
}

const areaOf = ({ widthPx, heightPx }: PartPatch): number => widthPx * heightPx;

function putBack(into: Plane, from: Plane, { part, fit }: FoundPart): Plane {
  const [cos, sin] = [Math.cos((part.turnDeg * Math.PI) / 180), Math.sin((part.turnDeg * Math.PI) / 180)];
  const reach = Math.ceil(Math.hypot(part.widthPx, part.heightPx) / 2) + FADE_PX;
  const { width, height } = into;
  for (let y = Math.max(0, Math.floor(part.y - reach)); y <= Math.min(height - 1, part.y + reach); y++) {
    for (let x = Math.max(0, Math.floor(part.x - reach)); x <= Math.min(width - 1, part.x + reach); x++) {
      const [u, v] = [x - part.x, y - part.y];
      const outX = Math.abs(u * cos + v * sin) - part.widthPx / 2;
      const outY = Math.abs(-u * sin + v * cos) - part.heightPx / 2;
      const share = 1 - Math.max(0, outX, outY) / FADE_PX;
      if (share > 0) into.data[y * width + x] = valueAt(from, x + share * fit.dx, y + share * fit.dy);
    }
  }
  return into;
}
