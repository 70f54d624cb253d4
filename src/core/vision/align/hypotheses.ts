import type { Features, FeatureKind, GreyBytes, Homography, Matches, PictureLibrary } from '../picture-library.ts';
import { isPlausible } from './homography.ts';

/** A way in which the other picture may lie, and the share of its voters that agree with it. */
export interface Hypothesis {
  readonly h: Homography;
  readonly features: FeatureKind;
  readonly votes: number;
}

const FEATURES = 2500;
/** Nearest points looked at for each: on a board with a pattern that repeats, the right partner is seldom the nearest one. */
const NEAREST = 3;
const TURNS = 18;
/** Bins per doubling of the size, and position bins along the longer side of the other picture. */
const SIZES = 2;
const PLACES = 6;
/** Peaks of the vote that are followed up, and votes below which a peak is not one. */
const PEAKS = 6;
const LEAST_VOTES = 8;
const WITHIN_PX = 3;

/**
 * The maps from the reference to the other picture for which matched points vote most, best supported first. Every pair of similar points says one turn, one
 * size and one place of the picture's middle; pairs that say the same are gathered, also where no pair is unmistakable, and each gathering gives one
 * map by a robust fit. After D. Ballard, Pattern Recognition 13 (1981), and D. Lowe, IJCV 60 (2004), §7.3.
 */
export function hypotheses(reference: GreyBytes, other: GreyBytes, kind: FeatureKind, library: PictureLibrary): Hypothesis[] {
  const a = library.features(reference, kind, FEATURES);
  const b = library.features(other, kind, FEATURES);
  if (a.count < LEAST_VOTES || b.count < LEAST_VOTES) return [];
  const matches = library.matches(a, b, NEAREST);
  const groups = [nearestOnly(matches), ...peaksOf(votesOf(a, b, matches, reference, other))];
  return groups
    .filter((members) => members.length >= LEAST_VOTES)
    .flatMap((members) => fitted(a, b, matches, members, library))
    .filter(({ h }) => isPlausible(h, reference.width, reference.height))
    .map(({ h, votes }) => ({ h, votes, features: kind }));
}

/** Pairs that are much more alike than the next candidate: what an unmistakable picture needs alone. */
function nearestOnly({ bits, rank }: Matches): number[] {
  return [...bits.keys()].filter((i) => rank[i] === 0 && (rank[i + 1] !== 1 || bits[i]! < 0.8 * bits[i + 1]!));
}

function votesOf(a: Features, b: Features, matches: Matches, reference: GreyBytes, other: GreyBytes): Map<number, number[]> {
  const votes = new Map<number, number[]>();
  const place = Math.max(other.width, other.height) / PLACES;
  for (let i = 0; i < matches.from.length; i++) {
    const p = matches.from[i]!;
    const q = matches.to[i]!;
    const turn = b.angleRad[q]! - a.angleRad[p]!;
    const size = b.sizePx[q]! / a.sizePx[p]!;
    const dx = reference.width / 2 - a.x[p]!;
    const dy = reference.height / 2 - a.y[p]!;
    const x = b.x[q]! + size * (dx * Math.cos(turn) - dy * Math.sin(turn));
    const y = b.y[q]! + size * (dx * Math.sin(turn) + dy * Math.cos(turn));
    castVotes(votes, i, (turn / (2 * Math.PI)) * TURNS, Math.log2(size) * SIZES, x / place, y / place);
  }
  return votes;
}

/** A pair votes for both neighbouring bins along each of the four axes, so that a border between bins splits no gathering. */
function castVotes(votes: Map<number, number[]>, pair: number, turn: number, size: number, x: number, y: number): void {
  for (let k = 0; k < 16; k++) {
    const t = (((Math.floor(turn - 0.5) + (k & 1)) % TURNS) + TURNS) % TURNS;
    const s = Math.floor(size - 0.5) + ((k >> 1) & 1) + 16;
    const c = Math.floor(x - 0.5) + ((k >> 2) & 1) + 32;
    const r = Math.floor(y - 0.5) + ((k >> 3) & 1) + 32;
    if (s < 0 || s > 31 || c < 0 || c > 63 || r < 0 || r > 63) continue;
    const key = ((t * 32 + s) * 64 + c) * 64 + r;
    const bin = votes.get(key);
    if (bin) bin.push(pair);
    else votes.set(key, [pair]);
  }
}

/** The bins with most votes that do not share most of their voters with a better one. */
function peaksOf(votes: Map<number, number[]>): number[][] {
  const sorted = [...votes.values()].sort((p, q) => q.length - p.length).slice(0, 400);
  const peaks: number[][] = [];
  const taken = new Set<number>();
  for (const bin of sorted) {
    if (peaks.length >= PEAKS) break;
    if (bin.filter((pair) => taken.has(pair)).length > bin.length / 2) continue;
    peaks.push(bin);
    for (const pair of bin) taken.add(pair);
  }
  return peaks;
}

function fitted(
  a: Features,
  b: Features,
  matches: Matches,
  members: readonly number[],
  library: PictureLibrary,
): { h: Homography; votes: number }[] {
  const from = new Float32Array(2 * members.length);
  const to = new Float32Array(2 * members.length);
  members.forEach((pair, i) => {
    from[2 * i] = a.x[matches.from[pair]!]!;
    from[2 * i + 1] = a.y[matches.from[pair]!]!;
    to[2 * i] = b.x[matches.to[pair]!]!;
    to[2 * i + 1] = b.y[matches.to[pair]!]!;
  });
  const h = library.homography(from, to, WITHIN_PX);
  return h ? [{ h, votes: members.length }] : [];
}
