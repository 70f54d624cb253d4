import type { Homography } from '../picture-library.ts';

/** How the camera stood against where it stood for the reference. */
export interface Pose {
  /** Turn of the board in the picture, anticlockwise as seen, degrees, −180..180. */
  readonly turnDeg: number;
  /** Lean of the board about its upright and its level axis, degrees; and both together. Positive `tiltRightDeg`: the right side is farther away. */
  readonly tiltRightDeg: number;
  readonly tiltDownDeg: number;
  readonly tiltDeg: number;
  /** Size of the board against the reference. */
  readonly scale: number;
}

/** Focal length over the longer side of the picture where nothing is known of the camera: 26 mm on 36 mm, a common main camera of a phone (common practice, no source). */
export const USUAL_FOCAL = 26 / 36;

/**
 * The pose that a map from the reference to the other picture speaks of, when the reference was taken square on. A plane that leans by θ about an axis through the
 * middle of the picture maps u to u·cos θ / (1 + (u/f)·sin θ), so the two perspective terms of the map, from the middle, are sin θ / f (own derivation). `focal`
 * is in px of the other picture.
 */
export function poseOf(h: Homography, width: number, height: number, focal: number): Pose {
  const cx = (width - 1) / 2;
  const cy = (height - 1) / 2;
  const w = h[6] * cx + h[7] * cy + h[8];
  const [u, v] = [(h[0] * cx + h[1] * cy + h[2]) / w, (h[3] * cx + h[4] * cy + h[5]) / w];
  const a = (h[0] - u * h[6]) / w;
  const b = (h[1] - u * h[7]) / w;
  const c = (h[3] - v * h[6]) / w;
  const d = (h[4] - v * h[7]) / w;
  const scale = Math.sqrt(Math.abs(a * d - b * c));
  const lean = (perspective: number): number => (Math.asin(Math.max(-1, Math.min(1, (perspective / w / scale) * focal))) * 180) / Math.PI;
  const tiltRightDeg = lean(h[6]);
  const tiltDownDeg = lean(h[7]);
  return {
    turnDeg: (Math.atan2(b - c, a + d) * 180) / Math.PI,
    tiltRightDeg,
    tiltDownDeg,
    tiltDeg: Math.hypot(tiltRightDeg, tiltDownDeg),
    scale,
  };
}
