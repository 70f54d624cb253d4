import { bounded, components, type Component } from '../image/components.ts';
import type { DifferenceMaps } from './difference-maps.ts';

/** From what size of difference on a place is worth a look, and how far it reaches. */
export interface Seeding {
  /** Which of the three envelopes seeds: a shift of 1, 2 or 3 px. */
  readonly radiusPx: 1 | 2 | 3;
  /** Grey beyond the envelope, and colour distance, that seed. */
  readonly grey: number;
  readonly colour: number;
  /** Edges of a cell that are in one picture only. */
  readonly cell: number;
  /** Least number of seed pixels that touch. */
  readonly pixels: number;
  /** Grey difference and colour distance through which a seed grows, and by how many px at most. */
  readonly growGrey: number;
  readonly growColour: number;
  readonly growPx: number;
  /** Groups closer than twice this are one. */
  readonly joinPx: number;
  /** All limits times each of these, in turn: a group that runs together at a low limit falls apart into its true differences at a higher one. */
  readonly levels: readonly number[];
}

/**
 * Where a picture may differ: groups of pixels at each level of the limits, the lowest level first. Groups of a higher level that cover about the same as one before are left
 * out. Groups of different levels may lie in one another; nothing is judged yet.
 */
export function candidates(maps: DifferenceMaps, seeding: Seeding): Component[] {
  const found: Component[] = [];
  for (const level of seeding.levels) {
    const { grey, colour, cell, growGrey, growColour } = seeding;
    const at = {
      ...seeding,
      grey: grey * level,
      colour: colour * level,
      cell: cell * level,
      growGrey: growGrey * level,
      growColour: growColour * level,
    };
    const fresh = atLevel(maps, at).filter((group) => !found.some((known) => sameExtent(known, group)));
    found.push(...fresh);
  }
  return found;
}

function sameExtent(a: Component, b: Component): boolean {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left) + 1;
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) + 1;
  if (width <= 0 || height <= 0) return false;
  return width * height > 0.75 * (areaOf(a) + areaOf(b) - width * height);
}

const areaOf = ({ left, top, right, bottom }: Component): number => (right - left + 1) * (bottom - top + 1);

function atLevel(maps: DifferenceMaps, seeding: Seeding): Component[] {
  const seeds = components(seedMask(maps, seeding), maps.width).filter(({ pixels }) => pixels.length >= seeding.pixels);
  const grown = grownMask(maps, seeds, seeding);
  const joined = components(widened(grown, maps.width, seeding.joinPx), maps.width);
  return joined.map(({ pixels }) =>
    bounded(
      pixels.filter((i) => grown[i]),
      maps.width,
    ),
  );
}

/** Of groups with chances, those that no likelier group covers: of nested ones the likeliest stays. */
export function withoutCovered<T extends { readonly candidate: Component; readonly chance: number }>(judged: readonly T[]): T[] {
  const kept: T[] = [];
  for (const each of [...judged].sort((a, b) => b.chance - a.chance))
    if (!kept.some(({ candidate }) => covered(candidate, each.candidate) > 0.3)) kept.push(each);
  return kept;
}

/** Overlap of two groups' boxes over the smaller of them. */
function covered(a: Component, b: Component): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left) + 1;
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) + 1;
  return width <= 0 || height <= 0 ? 0 : (width * height) / Math.min(areaOf(a), areaOf(b));
}

function seedMask(maps: DifferenceMaps, { radiusPx, grey, colour, cell }: Seeding): Uint8Array {
  const mask = new Uint8Array(maps.valid.length);
  const beyond = maps.beyond[radiusPx - 1]!.data;
  const near = maps.beyond[0].data;
  for (let i = 0; i < mask.length; i++) {
    if (!maps.valid[i]) continue;
    if (Math.abs(beyond[i]!) > grey || maps.colour.data[i]! > colour) mask[i] = 1;
    else if (Math.abs(near[i]!) > grey / 2 && cellAt(maps, i) > cell) mask[i] = 1;
  }
  return mask;
}

/** The cell of a pixel in the planes of cells. */
export function cellOf({ width, cellPx, went }: DifferenceMaps, pixel: number): number {
  const x = pixel % width;
  return Math.floor((pixel - x) / width / cellPx) * went.width + Math.floor(x / cellPx);
}

function cellAt(maps: DifferenceMaps, pixel: number): number {
  const cell = cellOf(maps, pixel);
  return Math.max(maps.went.data[cell]!, maps.came.data[cell]!);
}

function grownMask(
  { width, raw, colour, valid }: DifferenceMaps,
  seeds: readonly Component[],
  { growGrey, growColour, growPx }: Seeding,
): Uint8Array {
  const mask = new Uint8Array(valid.length);
  let front = seeds.flatMap(({ pixels }) => pixels);
  for (const i of front) mask[i] = 1;
  for (let step = 0; step < growPx; step++) {
    const next: number[] = [];
    for (const i of front) {
      const x = i % width;
      for (const j of [x > 0 ? i - 1 : i, x < width - 1 ? i + 1 : i, i - width, i + width]) {
        if (j < 0 || j >= mask.length || mask[j] || !valid[j]) continue;
        if (Math.abs(raw.data[j]!) <= growGrey && colour.data[j]! <= growColour) continue;
        mask[j] = 1;
        next.push(j);
      }
    }
    front = next;
  }
  return mask;
}

/** The mask grown by `radius` px along both axes. */
export function widened(mask: Uint8Array, width: number, radius: number): Uint8Array {
  const height = mask.length / width;
  const half = new Uint8Array(mask.length);
  const out = new Uint8Array(mask.length);
  for (let y = 0; y < height; y++) {
    let last = -Infinity;
    for (let x = -radius; x < width; x++) {
      if (x + radius < width && mask[y * width + x + radius]) last = x + radius;
      if (x >= 0 && last >= x - radius) half[y * width + x] = 1;
    }
  }
  for (let x = 0; x < width; x++) {
    let last = -Infinity;
    for (let y = -radius; y < height; y++) {
      if (y + radius < height && half[(y + radius) * width + x]) last = y + radius;
      if (y >= 0 && last >= y - radius) out[y * width + x] = 1;
    }
  }
  return out;
}
