const rad = (deg) => (deg * Math.PI) / 180;
/** Focal length over the width of the photo: 26 mm on 36 mm, as common phones have it (common practice, no source). */
const FOCAL = 26 / 36;
/** For a scan: so far away that lines of sight are parallel. */
const FAR_FOCAL = 60;

/**
 * A camera over a board (mm, y down, z towards the camera). `pose`: `tiltDeg` towards `towardDeg`, `turnDeg` about the line of sight, `fill` share of the width that
 * the board takes, `shift` of the board's middle in shares of the width; `scan` has no perspective; `bend` as the lens bends: r → r·(1 + bend·(r/half diagonal)²).
 */
export function cameraOver(board, size, { tiltDeg, towardDeg, turnDeg, fill, shift = [0, 0], isScan = false, bend = 0 }) {
  const focalPx = (isScan ? FAR_FOCAL : FOCAL) * size.width;
  const distance = (focalPx * board.width) / (fill * size.width);
  const [cosA, sinA] = [Math.cos(rad(towardDeg)), Math.sin(rad(towardDeg))];
  const axis = [Math.sin(rad(tiltDeg)) * cosA, Math.sin(rad(tiltDeg)) * sinA, Math.cos(rad(tiltDeg))];
  const flatRight = normal(cross([0, 1, 0], axis));
  const flatDown = cross(axis, flatRight);
  const [cos, sin] = [Math.cos(rad(turnDeg)), Math.sin(rad(turnDeg))];
  const right = flatRight.map((v, i) => v * cos + flatDown[i] * sin);
  const down = flatRight.map((v, i) => -v * sin + flatDown[i] * cos);
  const middle = [board.width / 2, board.height / 2, 0];
  const aside = shift.map((share) => (share * board.width) / fill);
  const eye = middle.map((v, i) => v + axis[i] * distance - right[i] * aside[0] - down[i] * aside[1]);
  return { eye, right, down, axis, focalPx, distance, bend, ...size };
}

/** Where a point of the board's frame lies in the photo, px. */
export function seenAt({ eye, right, down, axis, focalPx, width, height, bend }, point) {
  const d = point.map((v, i) => v - eye[i]);
  const depth = -dot(d, axis);
  const [x, y] = [(focalPx * dot(d, right)) / depth, (focalPx * dot(d, down)) / depth];
  const r2 = (x * x + y * y) / ((width * width + height * height) / 4);
  return [(width - 1) / 2 + x * (1 + bend * r2), (height - 1) / 2 + y * (1 + bend * r2)];
}

/** Angle between the lines of sight of two cameras over the same board, degrees. */
export const degreesApart = (a, b) => (Math.acos(Math.min(1, dot(a.axis, b.axis))) * 180) / Math.PI;

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const normal = (v) => v.map((each) => each / Math.hypot(...v));
