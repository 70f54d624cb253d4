import { highest, lowest } from '../image/envelope.ts';
import { planeOf, type Plane } from '../image/plane.ts';

/**
 * By how much `plane` leaves what `from` shows within `radius` px, signed: positive where it is brighter than all of it, negative where it is darker, zero
 * inside that envelope. A shift of up to `radius` px alone therefore shows nothing.
 */
export function beyondEnvelope(plane: Plane, from: Plane, radius: number): Plane {
  const low = lowest(from, radius).data;
  const high = highest(from, radius).data;
  const out = planeOf(plane.width, plane.height);
  for (let i = 0; i < out.data.length; i++) {
    const value = plane.data[i]!;
    if (value > high[i]!) out.data[i] = value - high[i]!;
    else if (value < low[i]!) out.data[i] = value - low[i]!;
  }
  return out;
}

/**
 * What differs beyond a shift of `radius` px, signed as "other minus reference": the greater of what the other shows beyond the reference (something came) and
 * what the reference shows beyond the other (something went).
 */
export function excess(reference: Plane, other: Plane, radius: number): Plane {
  const came = beyondEnvelope(other, reference, radius);
  const went = beyondEnvelope(reference, other, radius);
  for (let i = 0; i < came.data.length; i++) if (Math.abs(went.data[i]!) > Math.abs(came.data[i]!)) came.data[i] = -went.data[i]!;
  return came;
}
