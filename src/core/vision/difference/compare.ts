import { align, type Alignment, type AlignmentRefusal, type AlignOptions } from '../align/align.ts';
import type { Component } from '../image/components.ts';
import { pictureOf, type Picture } from '../image/picture.ts';
import type { Pixels } from '../image/plane.ts';
import type { PictureLibrary } from '../picture-library.ts';
import { chanceOf, logOddsOf } from '../ranking/boosted-trees.ts';
import { candidates, withoutCovered } from './candidates.ts';
import { differenceMaps, type DifferenceMaps } from './difference-maps.ts';
import { featuresOf } from './features.ts';
import { layTogether } from './lay-together.ts';
import { equallySharp } from './match-blur.ts';
import { outlineOf } from './outline.ts';
import { lostParts, partFeaturesOf, partUnder } from './part-features.ts';
import { isMerelyShifted, type PartPatch } from './part-patch.ts';
import { DIFFERENCE_KINDS, profileFor, type DifferenceKind, type Profile } from './profile.ts';
import { foundParts, settled, type FoundPart } from './settle-parts.ts';
import { zonesOf, type Zone } from './zones.ts';

/** A difference put before the person; nothing is believed of it until they confirm it. */
export interface Proposal {
  /** Corners of a polygon around it, px of the reference. */
  readonly outline: readonly (readonly [number, number])[];
  readonly box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  readonly kind: DifferenceKind;
  /** Chance that it is a real difference of the boards, not of the photos; 0..1, as it held on pictures like those the ranker learned from. */
  readonly chance: number;
  /** The known part it lies on. */
  readonly part?: string;
}

export interface Comparison {
  readonly ok: true;
  readonly alignment: Alignment;
  /** Most likely first; all of them: the strictness picks. */
  readonly proposals: readonly Proposal[];
  /** What could not be compared. Never counted as clean. */
  readonly zones: readonly Zone[];
  readonly profile: Profile['name'];
}

export interface CompareOptions extends AlignOptions {
  readonly parts?: readonly PartPatch[];
  /** Told of each step by its name and the share of the work that is done. */
  readonly progress?: (step: CompareStep, share: number) => void;
}

export type CompareStep = 'aligning' | 'laying-together' | 'comparing' | 'judging';

/** A candidate with what the ranker sees of it. */
export interface Judgeable {
  readonly candidate: Component;
  readonly features: Float32Array;
}

/** Everything up to the judgement: what `compare` judges and what the training learns from. */
export interface Laying {
  readonly ok: true;
  readonly alignment: Alignment;
  readonly profile: Profile;
  readonly maps: DifferenceMaps;
  readonly candidates: readonly Judgeable[];
  readonly found: readonly FoundPart[];
  readonly zones: readonly Zone[];
}

/**
 * Two or more photos of one side of a board: `other` against one or several known-good `references` (the first gives the frame). Out comes what differs, ranked,
 * or why they cannot be laid on one another. Pictures of some 1000 to 2000 px on the longer side; larger ones are shrunk before by the caller.
 */
export function compare(
  references: readonly Pixels[],
  other: Pixels,
  library: PictureLibrary,
  options: CompareOptions = {},
): Comparison | AlignmentRefusal {
  const laying = lay(references, other, library, options);
  if (!laying.ok) return laying;
  options.progress?.('judging', 0.9);
  const all = laying.candidates.map((each) => ({ candidate: each.candidate, proposal: judged(laying, each) }));
  const proposals = withoutCovered(all.map((each) => ({ ...each, chance: each.proposal.chance }))).map(({ proposal }) => proposal);
  return { ok: true, alignment: laying.alignment, proposals, zones: laying.zones, profile: laying.profile.name };
}

/** Lays the pictures together and finds candidates, without judging them. */
export function lay(
  references: readonly Pixels[],
  other: Pixels,
  library: PictureLibrary,
  options: CompareOptions = {},
): Laying | AlignmentRefusal {
  const [first, ...more] = references.map(pictureOf) as [Picture, ...Picture[]];
  const picture = pictureOf(other);
  const parts = options.parts ?? [];
  options.progress?.('aligning', 0);
  const rough = align(first.grey, picture.grey, library, options);
  if (!rough.ok) return rough;
  options.progress?.('laying-together', 0.4);
  const laid = layTogether(first, picture, rough);
  const alignment = { ...rough, displacement: laid.displacement };
  const known = more.flatMap((each) => {
    const found = align(first.grey, each.grey, library, options);
    return found.ok ? [settledIn(first, layTogether(first, each, found).picture, parts).picture] : [];
  });
  if (options.shouldStop?.()) return { ok: false, code: 'stopped' };
  options.progress?.('comparing', 0.6);
  const profile = profileFor(first.grey, parts.length > 0);
  const { found, picture: inPlace } = settledIn(first, laid.picture, parts);
  const sharp = equallySharp(first, inPlace);
  const maps = differenceMaps([sharp.reference, ...known], sharp.other, laid.valid);
  const zones = zonesOf(first.grey, laid.asItCame, inPlace.grey, laid.valid, profile.name === 'photo');
  const seen = candidates(maps, profile.seeding);
  // A part that another good board does not show either is told by the pixels alone, which know of all references.
  const isSeen = (part: Component): boolean => known.length === 0 || seen.some((each) => meets(each, part));
  const lost = new Set(lostParts(found, maps.width, maps.height, laid.valid).filter(isSeen));
  const judgeable = [...seen, ...lost]
    .filter((candidate) => !isInZone(candidate, zones))
    .map((candidate) => ({ candidate, features: rowOf(maps, candidate, profile, found, lost.has(candidate)) }));
  return { ok: true, alignment, profile, maps, candidates: judgeable, found, zones };
}

/** A picture that lies on the reference, with its known parts found and put back. */
function settledIn(reference: Picture, laid: Picture, parts: readonly PartPatch[]): { found: FoundPart[]; picture: Picture } {
  if (parts.length === 0) return { found: [], picture: laid };
  const found = foundParts(reference.grey, laid.grey, parts);
  return { found, picture: settled(laid, found) };
}

function rowOf(maps: DifferenceMaps, candidate: Component, profile: Profile, found: readonly FoundPart[], isLost: boolean): Float32Array {
  const seen = featuresOf(maps, candidate, profile.unitGrey);
  return profile.knowsParts ? Float32Array.of(...seen, ...partFeaturesOf(found, candidate, isLost)) : seen;
}

const meets = (a: Component, b: Component): boolean => a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;

const isInZone = ({ left, right, top, bottom }: Component, zones: readonly Zone[]): boolean => {
  const x = (left + right) / 2;
  const y = (top + bottom) / 2;
  return zones.some((zone) => zone.reason !== 'does-not-fit' && x >= zone.left && x < zone.right && y >= zone.top && y < zone.bottom);
};

function judged({ alignment, maps, profile, found }: Laying, { candidate, features }: Judgeable): Proposal {
  const { left, top, right, bottom } = candidate;
  const under = partUnder(found, candidate);
  const isMoved = under && under.fit.best > 0.85 && under.fit.asItLies < 0.7 && !isMerelyShifted(under.fit, under.part);
  return {
    outline: outlineOf(candidate, maps.width),
    box: { left, top, right: right + 1, bottom: bottom + 1 },
    kind: isMoved ? 'moved' : kindOf(profile, features),
    chance: chanceOf(logOddsOf(profile.ranker.real, features) + profile.oddsAt(alignment.pose.tiltDeg)),
    ...(under && { part: under.part.part }),
  };
}

function kindOf({ ranker }: Profile, features: Float32Array): DifferenceKind {
  const scored = DIFFERENCE_KINDS.flatMap((kind) => {
    const trees = ranker.kinds[kind];
    return trees ? [{ kind, odds: logOddsOf(trees, features) }] : [];
  });
  return scored.sort((a, b) => b.odds - a.odds)[0]?.kind ?? 'damaged';
}
