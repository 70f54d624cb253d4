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
export const excesses = (reference: Plane, other: Plane, most: number): Plane[] => {
  const about = envelopesOf(other, most);
  return envelopesOf(reference, most).map((around, k) => greaterExcess(reference, around, other, about[k]!));
};

/** What differs beyond a shift of `radius` px alone, as `excesses` has it. */
export const excessAt = (reference: Plane, other: Plane, radius: number): Plane =>
  greaterExcess(reference, envelopesOf(reference, radius).at(-1)!, other, envelopesOf(other, radius).at(-1)!);

function greaterExcess(reference: Plane, around: Envelope, other: Plane, about: Envelope): Plane {
  const came = beyondEnvelope(other, around).data;
  const went = beyondEnvelope(reference, about).data;
  for (let i = 0; i < came.length; i++) {
    const gone = went[i]!;
    if (gone !== 0 && Math.abs(gone) > Math.abs(came[i]!)) came[i] = -gone;
  }
  return { ...reference, data: came };
}
