import { boxBlur } from '../image/blur.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { resized } from '../image/resample.ts';
import type { FeatureKind, GreyBytes, Homography, PictureLibrary } from '../picture-library.ts';
import { agreementOf, type Agreement } from './agreement.ts';
import { rescaledDisplacement, warpedBy, type Displacement } from './displacement.ts';
import { cornersApart, isPlausible, mapped, rescaled, seenIn, warpedByHomography } from './homography.ts';
import { hypotheses } from './hypotheses.ts';
import { outlineMaps } from './outline-map.ts';
import { poseOf, USUAL_FOCAL, type Pose } from './pose.ts';
import { pairPyramid, refinedMap, type PairLevel } from './refine-map.ts';
import { FLOW, smoothFlow } from './smooth-flow.ts';

/** How the other picture lies on the reference: p in the reference is at h(p + d(p)) in the other. */
export interface Alignment {
  readonly ok: true;
  readonly h: Homography;
  readonly displacement: Displacement;
  readonly agreement: Agreement;
  readonly pose: Pose;
}

/** Why two pictures were not laid on one another, with what was measured. */
export interface AlignmentRefusal {
  readonly ok: false;
  readonly code: 'no-structure' | 'too-different' | 'opposite-sides' | 'repetitive' | 'too-little-shared' | 'too-oblique' | 'stopped';
  readonly tiltDeg?: number;
  readonly agreement?: Agreement;
}

export interface AlignOptions {
  /** Focal length of the other picture in px; a usual one where it is not known. */
  readonly focalPx?: number;
  readonly shouldStop?: () => boolean;
}

/** Longer side of the reference, px, at which features are sought; maps are first judged at half of it. */
const FEATURE_PX = 900;
/** Limits of what is accepted, tuned on the study's tuning half. */
const LEAST_FITTING = 0.75;
const SURE_FITTING = 0.85;
/** A pair that fits so well as it lies needs no features. */
const UNMOVED_FITTING = 0.9;
const LEAST_OVERLAP = 0.4;
const RIVAL_MARGIN = 0.06;
const MOST_TILT_DEG = 40;

/**
 * Lays `other` on `reference` (both grey): maps are proposed by matched corners, then by blobs where those are not sure, each is refined and judged by how
 * the pictures agree under it, and the best is taken only where it agrees well and no different one agrees about as well. A smooth displacement for lens,
 * bend and low parallax follows. Any rotation; the board may lie in a larger scene. Refusals are values, never a wrong map.
 */
export function align(reference: Plane, other: Plane, library: PictureLibrary, options: AlignOptions = {}): Alignment | AlignmentRefusal {
  const stop = options.shouldStop ?? ((): boolean => false);
  const pair = new Judged(reference, other);
  if (!pair.hasStructure()) return { ok: false, code: 'no-structure' };
  let found = pair.judgedAsTheyAre();
  if (!found[0] || found[0].agreement.fitting < UNMOVED_FITTING) found = sortedByFit([...found, ...pair.judgedMaps('corners', library)]);
  if (stop()) return { ok: false, code: 'stopped' };
  if (!found[0] || found[0].agreement.fitting < SURE_FITTING) found = sortedByFit([...found, ...pair.judgedMaps('blobs', library)]);
  if (!found[0] || found[0].agreement.fitting < SURE_FITTING) found = sortedByFit([...found, ...pair.judgedOutlines()]);
  if (stop()) return { ok: false, code: 'stopped' };
  const best = found[0];
  if (!best || best.agreement.fitting < LEAST_FITTING) return refusal(pair, best, library);
  if (best.agreement.overlap < LEAST_OVERLAP) return { ok: false, code: 'too-little-shared', agreement: best.agreement };
  const rival = found.find((each) => pair.apart(each.h, best.h) > 0.03 * FEATURE_PX);
  if (rival && rival.agreement.fitting > best.agreement.fitting - RIVAL_MARGIN)
    return { ok: false, code: 'repetitive', agreement: best.agreement };
  return finished(reference, other, pair, best, options);
}

function finished(reference: Plane, other: Plane, pair: Judged, best: JudgedMap, options: AlignOptions): Alignment | AlignmentRefusal {
  const h = pair.atFullSize(best.h);
  const focal = options.focalPx ?? USUAL_FOCAL * Math.max(other.width, other.height);
  const pose = poseOf(h, reference.width, reference.height, focal);
  if (pose.tiltDeg > MOST_TILT_DEG) return { ok: false, code: 'too-oblique', tiltDeg: pose.tiltDeg, agreement: best.agreement };
  const field = pair.displacement(best.h);
  const displacement = rescaledDisplacement(field, 1 / pair.scaleReference, reference.width, reference.height);
  return { ok: true, h, displacement, agreement: best.agreement, pose };
}

function refusal(pair: Judged, best: JudgedMap | undefined, library: PictureLibrary): AlignmentRefusal {
  const seenThrough = pair.mirrored().judgedMaps('corners', library)[0];
  if (seenThrough && seenThrough.agreement.fitting > (best?.agreement.fitting ?? 0) + 0.1 && seenThrough.agreement.fitting > 0.3)
    return { ok: false, code: 'opposite-sides', agreement: seenThrough.agreement };
  return best ? { ok: false, code: 'too-different', agreement: best.agreement } : { ok: false, code: 'too-different' };
}

interface JudgedMap {
  readonly h: Homography;
  readonly agreement: Agreement;
}

const sortedByFit = (found: readonly JudgedMap[]): JudgedMap[] => [...found].sort((a, b) => b.agreement.fitting - a.agreement.fitting);

/** A pair at the size at which its maps are sought and judged. */
class Judged {
  readonly scaleReference: number;
  private readonly scaleOther: number;
  private readonly a: Plane;
  private readonly b: Plane;
  private readonly levels: readonly PairLevel[];

  constructor(
    private readonly reference: Plane,
    private readonly other: Plane,
  ) {
    this.scaleReference = Math.min(1, FEATURE_PX / Math.max(reference.width, reference.height));
    this.scaleOther = Math.min(1, (1.3 * FEATURE_PX) / Math.max(other.width, other.height));
    this.a = evened(shrunk(reference, this.scaleReference));
    this.b = evened(shrunk(other, this.scaleOther));
    this.levels = pairPyramid(this.a, this.b, 3);
  }

  hasStructure(): boolean {
    return [this.reference, this.other].every((plane) => contrastOf(plane) > 2);
  }

  /** The pair with the reference seen from behind. */
  mirrored(): Judged {
    const { width, height, data } = this.reference;
    const flipped = planeOf(width, height);
    for (let i = 0; i < data.length; i++) flipped.data[i] = data[i - 2 * (i % width) + width - 1]!;
    return new Judged({ width, height, data: flipped.data }, this.other);
  }

  apart(p: Homography, q: Homography): number {
    return cornersApart(p, q, this.a.width, this.a.height);
  }

  atFullSize(h: Homography): Homography {
    return rescaled(h, this.reference.width / this.a.width, this.other.width / this.b.width);
  }

  /**
   * Maps from features, best first. Rough agreement sorts out what is not worth refining, agreement at half size what cannot win; only the best and its rivals are
   * refined and judged at full size.
   */
  judgedMaps(kind: FeatureKind, library: PictureLibrary): JudgedMap[] {
    return this.judged(hypotheses(bytesOf(this.a), bytesOf(this.b), kind, library).map(({ h }) => h));
  }

  /** The pair as it lies, for scans and photos from one stand: both frames on one another. */
  judgedAsTheyAre(): JudgedMap[] {
    const x = this.b.width / this.a.width;
    const y = this.b.height / this.a.height;
    return this.judged([[x, 0, (x - 1) / 2, 0, y, (y - 1) / 2, 0, 0, 1]]);
  }

  /** Maps from the outlines of the boards, best first. */
  judgedOutlines(): JudgedMap[] {
    return this.judged(
      outlineMaps(shrunk(this.reference, this.scaleReference), shrunk(this.other, this.scaleOther)).filter((h) =>
        isPlausible(h, this.a.width, this.a.height),
      ),
    );
  }

  private judged(maps: readonly Homography[]): JudgedMap[] {
    const rough = maps.map((h) => ({ h, agreement: this.judge(h, 4) }));
    const halfway = this.distinct(rough, 4, 0.2).map(({ h }) => {
      const better = refinedMap(this.levels, h, 3, 1);
      return { h: better, agreement: this.judge(better, 2) };
    });
    const inReach = this.distinct(halfway, 3, (sortedByFit(halfway)[0]?.agreement.fitting ?? 0) - 0.25);
    return sortedByFit(
      inReach.map(({ h }) => {
        const better = refinedMap(this.levels, h, 0, 0);
        return { h: better, agreement: this.judgedClosely(better) };
      }),
    );
  }

  /** The best maps that differ from one another and fit at least so well. */
  private distinct(maps: readonly JudgedMap[], most: number, leastFitting: number): JudgedMap[] {
    const kept: JudgedMap[] = [];
    for (const each of sortedByFit(maps)) {
      if (kept.length >= most || each.agreement.fitting < leastFitting) break;
      if (!kept.some((known) => this.apart(known.h, each.h) < 6)) kept.push(each);
    }
    return kept;
  }

  private judge(h: Homography, searchPx: number): Agreement {
    const { reference, other } = this.levels[1]!;
    const small = rescaled(h, 0.5, 0.5);
    const laid = warpedByHomography(other, small, reference.width, reference.height);
    return agreementOf(reference, laid, seenIn(small, reference.width, reference.height, other.width, other.height, 2), searchPx);
  }

  /** Agreement with the smooth displacement in place, at the size of the features. */
  private judgedClosely(h: Homography): Agreement {
    const { width, height } = this.a;
    const laid = warpedBy(warpedByHomography(this.b, h, width, height), this.displacement(h), width, height);
    return agreementOf(this.a, laid, seenIn(h, width, height, this.b.width, this.b.height, 2), 1);
  }

  displacement(h: Homography): Displacement {
    const laid = warpedByHomography(this.b, h, this.a.width, this.a.height);
    return smoothFlow(this.a, laid, { ...FLOW, halvings: 3 });
  }
}

/** Light made even: less the local mean, over the local contrast, around 128. */
function evened(plane: Plane): Plane {
  const radius = Math.max(8, Math.round(0.04 * Math.max(plane.width, plane.height)));
  const mean = boxBlur(plane, radius);
  const squares = boxBlur({ ...plane, data: plane.data.map((v) => v * v) }, radius);
  const out = planeOf(plane.width, plane.height);
  for (let i = 0; i < out.data.length; i++) {
    const spread = Math.sqrt(Math.max(0, squares.data[i]! - mean.data[i]! ** 2));
    out.data[i] = Math.max(0, Math.min(255, 128 + (50 * (plane.data[i]! - mean.data[i]!)) / (spread + 25)));
  }
  return out;
}

const shrunk = (plane: Plane, factor: number): Plane =>
  factor >= 1 ? plane : resized(plane, Math.round(plane.width * factor), Math.round(plane.height * factor));

function bytesOf({ width, height, data }: Plane): GreyBytes {
  const bytes = new Uint8Array(data.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = data[i]! + 0.5;
  return { width, height, data: bytes };
}

function contrastOf({ data }: Plane): number {
  let sum = 0;
  let squares = 0;
  for (const v of data) {
    sum += v;
    squares += v * v;
  }
  return Math.sqrt(Math.max(0, squares / data.length - (sum / data.length) ** 2));
}

/** Where a pixel of the reference lies in the other picture. */
export function placeInOther({ h, displacement: { step, dx, dy } }: Alignment, x: number, y: number): [number, number] {
  const at = (grid: Plane): number => {
    const gx = Math.max(0, Math.min(grid.width - 1, x / step));
    const gy = Math.max(0, Math.min(grid.height - 1, y / step));
    const x0 = Math.floor(gx);
    const y0 = Math.floor(gy);
    const x1 = Math.min(grid.width - 1, x0 + 1);
    const y1 = Math.min(grid.height - 1, y0 + 1);
    const top = grid.data[y0 * grid.width + x0]! * (1 - gx + x0) + grid.data[y0 * grid.width + x1]! * (gx - x0);
    const bottom = grid.data[y1 * grid.width + x0]! * (1 - gx + x0) + grid.data[y1 * grid.width + x1]! * (gx - x0);
    return top * (1 - gy + y0) + bottom * (gy - y0);
  };
  return mapped(h, x + at(dx), y + at(dy));
}
