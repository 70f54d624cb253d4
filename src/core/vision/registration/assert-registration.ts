import { mapped } from '../align/homography.ts';
import type { MarkPair, Registration, RegistrationRefusal } from './register.ts';

/** The law of a registration: there and back is where one was, for the marks given and for others of the same photo, and each lies where it should to `withinPx`. Throws otherwise. */
export function assertRegistration(place: Registration | RegistrationRefusal, marks: readonly MarkPair[], withinPx = 1e-6): void {
  if (!place.ok) throw new Error(`no place: ${place.code}`);
  for (const { name, boardMm, photoPx } of marks) {
    const [u, v] = mapped(place.toPhoto, ...boardMm);
    const [x, y] = mapped(place.toBoard, u, v);
    if (Math.hypot(u - photoPx[0], v - photoPx[1]) > withinPx)
      throw new Error(`${name} lies ${Math.hypot(u - photoPx[0], v - photoPx[1])} px off`);
    if (Math.hypot(x - boardMm[0], y - boardMm[1]) > 1e-9 * Math.hypot(...boardMm, 1)) throw new Error(`${name} does not come back`);
  }
}
