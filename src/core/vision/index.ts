export { align, placeInOther, type Alignment, type AlignmentRefusal, type AlignOptions } from './align/align.ts';
export type { Agreement } from './align/agreement.ts';
export { warpedBy, type Displacement } from './align/displacement.ts';
export { fourPointMap, type Point, type Quad } from './align/four-point-map.ts';
export { composed, inverted, mapped } from './align/homography.ts';
export { pixelMapOf, type PixelMap } from './align/laid-on.ts';
export { laidPixels } from './align/laid-pixels.ts';
export { poseOf, USUAL_FOCAL, type Pose } from './align/pose.ts';
export { smoothFlow, FLOW, type FlowOptions } from './align/smooth-flow.ts';
export { photoQuality, QUALITY_LIMITS, type PhotoQuality, type PhotoTrouble } from './capture/photo-quality.ts';
export {
  OUTLINE_KINDS,
  proposeOutlines,
  LEAST_CHANCE,
  NEEDED_PX_PER_MM,
  referencesBeside,
  type ReadWord,
  type OutlineAnswer,
  type OutlineKind,
  type OutlineOptions,
  type ProposedOutline,
} from './proposals/index.ts';
export { measured, type Length, type Measured } from './registration/measure.ts';
export {
  register,
  MARK_LIMITS,
  type BoardSide,
  type MarkPair,
  type Registration,
  type RegistrationRefusal,
} from './registration/register.ts';
export { ciede2000 } from './colour/ciede2000.ts';
export { deltaE00, labOf, labOfSrgb, srgbOf, xyzOf, type DeltaE00, type Lab } from './colour/srgb.ts';
export { structuralSimilarity } from './colour/structural-similarity.ts';
export {
  balanceFrom,
  colourOf,
  shellColours,
  type Balance,
  type BalanceRefusal,
  type Patch,
  type ShellColour,
} from './colour/white-balance.ts';
export { compare, lay, type CompareOptions, type CompareStep, type Comparison, type Proposal } from './difference/compare.ts';
export { atStrictness } from './difference/strictness.ts';
export { withVariations, type SeenVariation } from './difference/known-variation.ts';
export { findPatch, isMerelyShifted, partAt, type PartPatch, type PatchFit } from './difference/part-patch.ts';
export { DIFFERENCE_KINDS, type DifferenceKind } from './difference/profile.ts';
export type { Zone, ZoneReason } from './difference/zones.ts';
export { pictureOf, type Picture } from './image/picture.ts';
export { greyOf, type Pixels, type Plane } from './image/plane.ts';
export type { Features, FeatureKind, GreyBytes, Homography, Matches, PictureLibrary } from './picture-library.ts';
export { VisionError } from './vision-error.ts';
export { checkDisplay, SHOWN, type DisplayAnswer, type DisplayFound, type DisplayQuestion, type Shown } from './display/check-display.ts';
export type { Dot, Line } from './display/odd-places.ts';
export type { Stain } from './display/stains.ts';
