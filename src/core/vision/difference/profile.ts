import type { Plane } from '../image/plane.ts';
import type { BoostedTrees } from '../ranking/boosted-trees.ts';
import { RANKERS } from '../ranking/ranker-numbers.ts';
import type { Seeding } from './candidates.ts';

/** What a difference is, as far as a picture tells. */
export const DIFFERENCE_KINDS = ['missing', 'added', 'moved', 'stain', 'damaged'] as const;
/**
 * A part or print is gone; something is there that should not be (solder, a bridge, a part); a part is moved, turned or tilted; stain, residue or corrosion; a track
 * or the mask is torn, scratched or bitten.
 */
export type DifferenceKind = (typeof DIFFERENCE_KINDS)[number];

/** What was learned of one sort of pictures: whether a candidate is real, and of what kind. */
export interface Ranker {
  readonly real: BoostedTrees;
  readonly kinds: Readonly<Partial<Record<DifferenceKind, BoostedTrees>>>;
}

/** How one sort of pictures is compared. */
export interface Profile {
  readonly name: 'bare' | 'photo';
  readonly seeding: Seeding;
  /** The grey difference that counts as one in the features. */
  readonly unitGrey: number;
  /** Whether its ranker sees `PART_FEATURES` as well. */
  readonly knowsParts: boolean;
  /** What is added to the ranker's log-odds, by the lean between the two photos. */
  readonly oddsAt: (tiltDeg: number) => number;
  readonly ranker: Ranker;
}

const NEVER = Number.POSITIVE_INFINITY;

/** Pictures of two brightnesses: bare boards, line art, scans of artwork. */
export const BARE: Profile = {
  name: 'bare',
  seeding: {
    radiusPx: 1,
    grey: 100,
    colour: NEVER,
    cell: NEVER,
    pixels: 4,
    growGrey: 90,
    growColour: NEVER,
    growPx: 8,
    joinPx: 3,
    levels: [1],
  },
  unitGrey: 255,
  knowsParts: false,
  oddsAt: () => 0,
  ranker: RANKERS.bare,
};

/** Photos and scans of boards with parts. */
export const PHOTO: Profile = {
  name: 'photo',
  seeding: {
    radiusPx: 2,
    grey: 16,
    colour: 14,
    cell: 0.5,
    pixels: 6,
    growGrey: 12,
    growColour: 12,
    growPx: 10,
    joinPx: 3,
    levels: [1, 2, 4],
  },
  unitGrey: 60,
  knowsParts: false,
  oddsAt: () => 0,
  ranker: RANKERS.photo,
};

/** The same where the parts are known. */
export const PLACED: Profile = { ...PHOTO, knowsParts: true, oddsAt: oddsByLean, ranker: RANKERS.placed };

/**
 * How the ranker that knows parts came out on drawn boards that were left out of its learning: too careful from about the same pose, a little too bold from elsewhere.
 * Log-odds at which half were real: −1.5 up to 3°, 0.3 from 8° on.
 */
function oddsByLean(tiltDeg: number): number {
  const [square, leaning] = [1.5, -0.3];
  const share = Math.max(0, Math.min(1, (tiltDeg - 3) / (8 - 3)));
  return square + share * (leaning - square);
}

/** The profile for pictures like this reference: bare where nine tenths of it are nearly black or nearly white; of photos by whether parts are known. */
export function profileFor({ data }: Plane, knowsParts: boolean): Profile {
  let dark = 0;
  let bright = 0;
  for (let i = 0; i < data.length; i++) {
    if (data[i]! > 205) bright++;
    else if (data[i]! < 50) dark++;
  }
  return dark + bright > 0.9 * data.length && bright > 0.02 * data.length ? BARE : knowsParts ? PLACED : PHOTO;
}
