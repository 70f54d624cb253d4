/** A grey picture, 8 bits, row-major, as a library of picture methods takes it. */
export interface GreyBytes {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What a feature is told apart by: corners of brightness (fast), or blobs in a non-linear scale space (slower, for blurred and odd pictures). */
export type FeatureKind = 'corners' | 'blobs';

/** Points of one picture, each with a direction (radians) and a size (px), and what their surroundings look like. */
export interface Features {
  readonly count: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly angleRad: Float32Array;
  readonly sizePx: Float32Array;
  /** `count` rows of `bytes` bytes, compared by the number of bits in which they differ. */
  readonly bytes: number;
  readonly descriptors: Uint8Array;
}

/** Pairs of points that look alike: index in the first and in the second picture, nearest first for each, and how many bits differ. */
export interface Matches {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly bits: Float32Array;
  /** 0 for the nearest of a point, 1 for the next, and so on. */
  readonly rank: Uint8Array;
}

/** A plane projective map, row-major 3 × 3, last entry 1. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** The smallest set of methods that the alignment asks of a library. Implemented in edges; every call may be made from a worker thread. */
export interface PictureLibrary {
  features(picture: GreyBytes, kind: FeatureKind, count: number): Features;
  /** The `nearest` most similar points of `b` for each point of `a`. */
  matches(a: Features, b: Features, nearest: number): Matches;
  /** The map that takes most of the points (x, y interleaved) to their partners within about `withinPx`; null where there is none. */
  homography(from: Float32Array, to: Float32Array, withinPx: number): Homography | null;
}
