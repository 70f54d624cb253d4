import { envelopesOf, type Envelope } from '../image/envelope.ts';
import { planeOf, type Plane } from '../image/plane.ts';

/**
 * By how much `plane` leaves an envelope, signed: positive where it is brighter than all of it, negative where it is darker, zero inside. A shift of up to the radius
 * of the envelope alone therefore shows nothing.
 */
export function beyondEnvelope(plane: Plane, { low, high }: Envelope): Plane {
  const out = planeOf(plane.width, plane.height);
  for (let i = 0; i < out.data.length; i++) {
    const value = plane.data[i]!;
    if (value > high.data[i]!) out.data[i] = value - high.data[i]!;
    else if (value < low.data[i]!) out.data[i] = value - low.data[i]!;
  }
  return out;
}

/**
 * What differs beyond a shift of 1, 2 … `most` px, one plane each, signed as "other minus reference": the greater of what the other shows beyond the reference (something
 * came) and what the reference shows beyond the other (something went).
 */
export function excesses(reference: Plane, other: Plane, most: number): Plane[] {
  const around = envelopesOf(reference, most);
  const about = envelopesOf(other, most);
  return around.map((envelope, k) => {
    const came = beyondEnvelope(other, envelope);
    const went = beyondEnvelope(reference, about[k]!);
    for (let i = 0; i < came.data.length; i++) if (Math.abs(went.data[i]!) > Math.abs(came.data[i]!)) came.data[i] = -went.data[i]!;
    return came;
  });
}
