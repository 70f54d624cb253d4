import type { Pixels } from '../image/plane.ts';
import { VisionError } from '../vision-error.ts';
import { encodedOf, labOfSrgb, lightOf, type DeltaE00, type Lab } from './srgb.ts';
import { ciede2000 } from './ciede2000.ts';

/** A rectangle of a picture in px; right and bottom are not included. */
export interface Patch {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What each channel's light is multiplied by, so that a grey card comes out grey. */
export interface Balance {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** A patch with a channel at its end (over- or underexposed) tells no balance. */
export type BalanceRefusal = { readonly ok: false; readonly code: 'overexposed' | 'underexposed' };

/** The mean light (0..1, linear) of a patch, channel by channel, and the share of its pixels with a channel at the upper end. */
export function lightOfPatch(picture: Pixels, patch: Patch): { light: [number, number, number]; blinded: number } {
  if (picture.channels === 1) throw new VisionError('bad-parameter', 'a picture without colour has no colour to balance');
  const sum: [number, number, number] = [0, 0, 0];
  let count = 0;
  let blinded = 0;
  for (let y = Math.max(0, patch.top); y < Math.min(picture.height, patch.bottom); y++) {
    for (let x = Math.max(0, patch.left); x < Math.min(picture.width, patch.right); x++) {
      const i = (y * picture.width + x) * picture.channels;
      count++;
      if (picture.data[i]! > 252 || picture.data[i + 1]! > 252 || picture.data[i + 2]! > 252) blinded++;
      for (let c = 0; c < 3; c++) sum[c]! += lightOf(picture.data[i + c]!);
    }
  }
  if (count === 0) throw new VisionError('empty-picture', 'the patch lies outside the picture');
  return { light: sum.map((s) => s / count) as [number, number, number], blinded: blinded / count };
}

/**
 * The balance under which a patch of known reflectance becomes what it is: grey of `reflectance` (a grey card has 0.18, common practice), brightness included. Von
 * Kries' rule on linear sRGB (J. von Kries, 1902), enough for the small casts of a lamp.
 */
export function balanceFrom(picture: Pixels, card: Patch, reflectance = 0.18): ({ readonly ok: true } & Balance) | BalanceRefusal {
  const { light, blinded } = lightOfPatch(picture, card);
  if (blinded > 0.02) return { ok: false, code: 'overexposed' };
  if (Math.min(...light) < 0.005) return { ok: false, code: 'underexposed' };
  return { ok: true, red: reflectance / light[0], green: reflectance / light[1], blue: reflectance / light[2] };
}

/** The colour of a patch under a balance: the mean of its light, as L*a*b*. */
export function colourOf(picture: Pixels, patch: Patch, { red, green, blue }: Balance): Lab {
  const { light } = lightOfPatch(picture, patch);
  return labOfSrgb(encodedOf(light[0] * red), encodedOf(light[1] * green), encodedOf(light[2] * blue));
}

/** How far the shell's colour in one region lies from the reference's. */
export interface ShellColour {
  readonly difference: DeltaE00;
  readonly colour: Lab;
  readonly reference: Lab;
  /** b* less that of the reference: above zero it is yellower. */
  readonly yellower: number;
}

/** Each region of a shell against a reference colour, both under a grey card. */
export const shellColours = (picture: Pixels, regions: readonly Patch[], balance: Balance, reference: Lab): ShellColour[] =>
  regions.map((region) => {
    const colour = colourOf(picture, region, balance);
    return { difference: ciede2000(reference, colour), colour, reference, yellower: colour.b - reference.b };
  });
