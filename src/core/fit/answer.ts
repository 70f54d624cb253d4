import type { Fillets, Level } from './goals.ts';
import type { Placing } from './pattern.ts';

export type Answer = 'fits' | 'fits-after-bending' | 'does-not-line-up' | 'cannot-say';

/** One land of the part over those of the place. */
export interface PadFit {
  /** Pins of the part that share the land. */
  readonly pins: readonly string[];
  /** Pads of the place under it. */
  readonly onto: readonly string[];
  /** Shared area over the smaller of the two; for feet over the foot. 0 to 1. */
  readonly overlap: number;
  /** From the middle of the land below to the middle of the one above, mm. */
  readonly offMm: readonly [x: number, y: number];
  /** How far it would have to be bent, mm. */
  readonly bendMm: number;
  /** How far the place reaches beyond the part: for feet the fillets, for lands the difference of the lands. Null without a partner. */
  readonly room: Fillets | null;
  /** Of feet: the best level of IPC-7351B that the fillets reach; null below the least, or where no goals are known. */
  readonly level: Level | null;
}

/** A leg or peg of the part over the nearest hole of the place. */
export interface HoleFit {
  readonly name: string;
  readonly kind: 'leg' | 'peg';
  /** From the middle of the hole to that of the leg, mm; null when no hole is near. */
  readonly offMm: readonly [x: number, y: number] | null;
  /** How far the leg would have to be bent, mm. */
  readonly bendMm: number;
  /** How much smaller the hole is than the one that the part asks for, along its tighter axis, mm; below zero when it is larger. */
  readonly tighterMm: number;
}

/** Why it does not line up. */
export type Reason =
  | { readonly code: 'no-pads'; readonly of: 'part' | 'place' }
  | { readonly code: 'pin-without-pad'; readonly pins: readonly string[] }
  | { readonly code: 'other-pitch'; readonly partMm: number; readonly placeMm: number }
  | { readonly code: 'pad-off'; readonly pins: readonly string[]; readonly byMm: number }
  | { readonly code: 'foot-too-large'; readonly pins: readonly string[] }
  | { readonly code: 'touches-other'; readonly pins: readonly string[]; readonly onto: readonly string[] }
  | { readonly code: 'pin-order'; readonly pairs: readonly (readonly [part: string, place: string])[] }
  | { readonly code: 'other-side' }
  | { readonly code: 'other-use'; readonly pins: readonly string[] }
  | { readonly code: 'hole-missing'; readonly kind: 'leg' | 'peg'; readonly name: string }
  | { readonly code: 'hole-off'; readonly kind: 'leg' | 'peg'; readonly name: string; readonly byMm: number }
  | { readonly code: 'hole-too-small'; readonly kind: 'leg' | 'peg'; readonly name: string; readonly byMm: number }
  | { readonly code: 'too-high'; readonly byMm: number }
  | { readonly code: 'mouth-turned'; readonly byDeg: number }
  | { readonly code: 'mouth-off'; readonly byMm: number }
  | { readonly code: 'contacts-other-side' };

/** What the data do not say. `decides`: the answer hangs on it. */
export type Ask =
  | { readonly code: 'feet'; readonly decides: true; readonly pins: readonly string[]; readonly byMm: number }
  | { readonly code: 'peg' | 'leg'; readonly decides: true; readonly name: string; readonly mostMm: number }
  | { readonly code: 'pin-1'; readonly decides: boolean }
  | { readonly code: 'contacts'; readonly decides: true; readonly of: 'part' | 'place' | 'both' }
  | { readonly code: 'height' | 'mouth' | 'mouth-reach'; readonly decides: false; readonly of: 'part' | 'place' | 'both' };

export interface FitAnswer {
  readonly answer: Answer;
  readonly placing: Placing;
  /** What the placing was found by. */
  readonly alignedOn: 'holes' | 'pads' | 'nothing';
  /** The farthest that any terminal has to be bent, mm; 0 unless it fits after bending. */
  readonly bendMm: number;
  readonly leastOverlap: number;
  readonly pads: readonly PadFit[];
  readonly holes: readonly HoleFit[];
  /** Pads of the place that get no terminal. */
  readonly unused: readonly string[];
  readonly reasons: readonly Reason[];
  readonly asks: readonly Ask[];
}

/** Limits of the answers. Common practice, no source, but for `LEG_PLAY`. */
export const LIMITS = {
  /** Overlap from which a land counts as covered. */
  overlap: 0.9,
  /** Below this overlap of lands not even measuring the feet will help. */
  doubtful: 0.5,
  /** Difference of pitch, as a share, from which it is another pitch. */
  pitch: 0.08,
  /** Share of a land that may lie on another conductor. */
  stray: 0.05,
  /** How far a peg or leg may be off in a hole as large as the part asks for, mm. */
  pegPlayMm: 0.05,
  legPlayMm: 0.1,
  /** A hole this much smaller than asked for still takes it, mm. For legs: what a hole of level B has over its leg (IPC-2222, from memory). */
  pegTighterMm: 0.05,
  legTighterMm: 0.2,
  /** Beyond this it surely does not go in, mm. */
  pegTooSmallMm: 0.3,
  legTooSmallMm: 0.4,
  /** A hole farther off than this is another one, mm. */
  nearHoleMm: 1,
  /** Bending below this is none, mm. */
  noBendMm: 0.02,
  mouthDeg: 1,
  mouthReachMm: 0.5,
} as const;

/** How far the terminals of a kind of part can be bent in the plane of the board, mm. Common practice, no source. */
export const BENDABLE_MM: Readonly<Record<string, number>> = {
  chip: 0,
  'no-lead': 0,
  'j-lead': 0,
  'gull-wing': 0.3,
  legs: 0.5,
  'wire-legs': 5,
  connector: 0.25,
  'ribbon-socket': 0.15,
  other: 0.15,
};
