import type { Plane } from '../image/plane.ts';

/** Why a place cannot be compared. */
export type ZoneReason = 'not-seen' | 'glare' | 'does-not-fit';

/** A rectangle of the reference, in px (right and bottom not included), in which nothing was compared: "look here yourself". */
export interface Zone {
  readonly reason: ZoneReason;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const SQUARE_PX = 32;
/** At and above it a sensor is taken to be blinded. */
const BLINDED_GREY = 250;

/**
 * Squares of the reference that could not be compared: not in the other picture, blinded by a highlight in one picture only, or not fitting at all although both hold
 * structure (hidden by a tall part, or another thing). `laid` is the other picture as it lies, in its own light. Highlights are looked for only
 * where pictures are `lit`: white artwork is no glare.
 */
export function zonesOf(reference: Plane, laid: Plane, inLight: Plane, valid: Uint8Array, lit: boolean): Zone[] {
  const zones: Zone[] = [];
  for (let top = 0; top < reference.height; top += SQUARE_PX) {
    for (let left = 0; left < reference.width; left += SQUARE_PX) {
      const right = Math.min(reference.width, left + SQUARE_PX);
      const bottom = Math.min(reference.height, top + SQUARE_PX);
      const reason = reasonAt(reference, laid, inLight, valid, { left, top, right, bottom });
      if (reason && (lit || reason !== 'glare')) zones.push({ reason, left, top, right, bottom });
    }
  }
  return zones;
}

function reasonAt(reference: Plane, laid: Plane, inLight: Plane, valid: Uint8Array, square: Omit<Zone, 'reason'>): ZoneReason | undefined {
  let [count, seen, glare, a, b, aa, bb, ab] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (let y = square.top; y < square.bottom; y++) {
    for (let x = square.left, i = y * reference.width + x; x < square.right; x++, i++) {
      count++;
      if (!valid[i]) continue;
      seen++;
      if (laid.data[i]! >= BLINDED_GREY !== reference.data[i]! >= BLINDED_GREY && Math.abs(laid.data[i]! - reference.data[i]!) > 25)
        glare++;
      const p = reference.data[i]!;
      const q = inLight.data[i]!;
      a += p;
      b += q;
      aa += p * p;
      bb += q * q;
      ab += p * q;
    }
  }
  if (seen < count / 2) return 'not-seen';
  if (glare > count / 2) return 'glare';
  const va = aa - (a * a) / seen;
  const vb = bb - (b * b) / seen;
  const structured = va > seen * 400 && vb > seen * 400;
  return structured && ab - (a * b) / seen < 0.1 * Math.sqrt(va * vb) ? 'does-not-fit' : undefined;
}
