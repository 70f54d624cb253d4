import type { Box } from './vision-defects.ts';

/** Overlap of two boxes over their union. */
export function overUnion(a: Box, b: Box): number {
  const width = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const height = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  if (width <= 0 || height <= 0) return 0;
  const shared = width * height;
  return shared / ((a[2] - a[0]) * (a[3] - a[1]) + (b[2] - b[0]) * (b[3] - b[1]) - shared);
}

/** The rule of the data set: a box counts when it overlaps so far. */
export const COUNTS_AT = 0.33;

/** How a proposal on a drawn photo counts as found: by a fifth of overlap over union, or with its middle in the true box and not more than four times as large. */
export function meets(proposed: Box, truth: Box): boolean {
  const x = (proposed[0] + proposed[2]) / 2;
  const y = (proposed[1] + proposed[3]) / 2;
  const isInside = x >= truth[0] && x <= truth[2] && y >= truth[1] && y <= truth[3];
  return overUnion(proposed, truth) >= 0.2 || (isInside && areaOf(proposed) <= 4 * areaOf(truth));
}

const areaOf = (box: Box): number => (box[2] - box[0]) * (box[3] - box[1]);

/** For each true box the index of the proposed box that meets it, one to one, best overlap first; −1 where none does. */
export function matched(truth: readonly Box[], proposed: readonly Box[]): number[] {
  const pairs = truth
    .flatMap((t, i) => proposed.map((p, k) => ({ i, k, overlap: overUnion(t, p) })))
    .filter(({ overlap }) => overlap >= COUNTS_AT)
    .sort((a, b) => b.overlap - a.overlap);
  const found = truth.map(() => -1);
  const used = new Set<number>();
  for (const { i, k } of pairs) {
    if (found[i] !== -1 || used.has(k)) continue;
    found[i] = k;
    used.add(k);
  }
  return found;
}

/** True boxes found, false boxes, and true boxes missed. */
export class Tally {
  hit = 0;
  false = 0;
  missed = 0;

  add(truth: readonly Box[], proposed: readonly Box[]): void {
    const hits = matched(truth, proposed).filter((k) => k >= 0).length;
    this.hit += hits;
    this.false += proposed.length - hits;
    this.missed += truth.length - hits;
  }

  get f1(): number {
    return (2 * this.hit) / Math.max(1, 2 * this.hit + this.false + this.missed);
  }
}

/** The margin, px, that the labels of DeepPCB leave around a defect: what fits its tuning half best. */
export const DEEPPCB_MARGIN_PX = 10;

/** A box widened by a margin, within a picture of this size. */
export const withMargin = (box: Box, margin: number, width: number, height: number): Box => [
  Math.max(0, box[0] - margin),
  Math.max(0, box[1] - margin),
  Math.min(width, box[2] + margin),
  Math.min(height, box[3] + margin),
];
