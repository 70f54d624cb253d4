import type { Point } from '../align/four-point-map.ts';
import { mapped } from '../align/homography.ts';
import type { Registration } from './register.ts';

/** A length on a board, mm, with its standard error. */
export interface Length {
  readonly mm: number;
  readonly errorMm: number;
}

/** What two places of a registered photo tell: how far they are apart, how far along the board's own axes, and where each lies on the board. */
export interface Measured {
  readonly apart: Length;
  readonly alongX: Length;
  readonly alongY: Length;
  readonly from: Point;
  readonly to: Point;
}

/** A place is tapped to about so many px of the photo, and so is a mark (from memory: by finger on a picture that was brought nearer). */
const TAP_PX = 1.5;

/**
 * Two places of a photo, px, on the board that it was laid on. The error counts the two taps and the marks: their spread where they check each other, else a tap each, over the
 * marks' own distance. What stands above the board is seen too large, and that is not counted: by its height over the distance of the camera.
 */
export function measured({ toBoard, pxPerMm, spreadMm, spanMm }: Registration, a: Point, b: Point): Measured {
  const [from, to] = [mapped(toBoard, ...a), mapped(toBoard, ...b)];
  const tapMm = TAP_PX / pxPerMm;
  const scale = (Math.SQRT2 * Math.max(tapMm, spreadMm ?? 0)) / spanMm;
  const length = (mm: number): Length => ({ mm, errorMm: Math.hypot(Math.SQRT2 * tapMm, scale * mm) });
  return {
    apart: length(Math.hypot(to[0] - from[0], to[1] - from[1])),
    alongX: length(Math.abs(to[0] - from[0])),
    alongY: length(Math.abs(to[1] - from[1])),
    from,
    to,
  };
}
