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
}

/** Where a picture may differ: groups of pixels, in order of their first pixel. Nothing is judged yet. */
export function candidates(maps: DifferenceMaps, seeding: Seeding): Component[] {
  const seeds = components(seedMask(maps, seeding), maps.width).filter(({ pixels }) => pixels.length >= seeding.pixels);
  const grown = grownMask(maps, seeds, seeding);
  const joined = components(widened(grown, maps.width, seeding.joinPx), maps.width);
  return joined
    .map(({ pixels }) => pixels.filter((i) => grown[i]))
    .map((pixels) => bounded(pixels, maps.width));
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

function grownMask({ width, raw, colour, valid }: DifferenceMaps, seeds: readonly Component[], { growGrey, growColour, growPx }: Seeding): Uint8Array {
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
