import type { Alignment } from '../align/align.ts';
import { pixelMapOf } from '../align/laid-on.ts';
import { sampleInto } from '../align/laid-pixels.ts';
import type { Pixels } from '../image/plane.ts';

type Polygon = readonly (readonly [x: number, y: number])[];

/** A place of another photo that shows what a good board may look like, too: its outline in px of that photo, and how the photo lies on the reference. */
export interface SeenVariation {
  readonly pixels: Pixels;
  readonly alignment: Alignment;
  readonly outline: Polygon;
}

/** Room around an outline that comes along, px: edges that moved lie on it. */
const ROOM_PX = 3;
/** Width of the ring around it in which the light of both photos is compared, px. */
const RING_PX = 10;

/**
 * Copies of a reference in which each variation is laid over its place, in the light of the reference there. Compared against these copies as against further
 * references, what looks like a known variation is no difference any more, and whatever else is there still is one. Variations that meet go into different copies; at
 * most `most` copies are made, the last variations first.
 */
export function withVariations(reference: Pixels, variations: readonly SeenVariation[], most: number): Pixels[] {
  const copies: { readonly pixels: Pixels; readonly taken: Uint8Array }[] = [];
  for (const variation of variations.toReversed()) {
    const patch = patchOf(reference, variation);
    if (patch.length === 0) continue;
    let copy = copies.find(({ taken }) => patch.every(({ at }) => taken[at] === 0));
    if (!copy) {
      if (copies.length >= most) continue;
      copy = { pixels: threeChannels(reference), taken: new Uint8Array(reference.width * reference.height) };
      copies.push(copy);
    }
    for (const { at, colour } of patch) {
      copy.taken[at] = 1;
      copy.pixels.data.set(colour, 3 * at);
    }
  }
  return copies.map(({ pixels }) => pixels);
}

interface PatchPixel {
  readonly at: number;
  readonly colour: Uint8Array;
}

/** The pixels of the reference under a variation, with what is to stand there. */
function patchOf(reference: Pixels, { pixels, alignment, outline }: SeenVariation): PatchPixel[] {
  const map = pixelMapOf(alignment.h, alignment.displacement, reference.width, reference.height);
  const box = boxOf(outline, ROOM_PX + RING_PX);
  const inside: number[] = [];
  const ring: number[] = [];
  for (let i = 0; i < map.x.data.length; i++) {
    const [u, v] = [map.x.data[i]!, map.y.data[i]!];
    if (u < box.left || v < box.top || u > box.right || v > box.bottom) continue;
    if (u < 0 || v < 0 || u > pixels.width - 1 || v > pixels.height - 1) continue;
    const gap = gapTo(outline, u, v);
    if (gap <= ROOM_PX) inside.push(i);
    else if (gap <= ROOM_PX + RING_PX) ring.push(i);
  }
  const seen = (i: number): Uint8Array => {
    const colour = new Uint8Array(3);
    sampleInto(colour, 0, pixels, map.x.data[i]!, map.y.data[i]!);
    return colour;
  };
  const gain = gainOf(reference, ring, seen);
  return inside.map((at) => ({ at, colour: Uint8Array.from(seen(at), (value, c) => Math.min(255, value * gain[c]! + 0.5)) }));
}

/** What the light of the photo is multiplied by to become that of the reference, by channel, from the ring around the place. */
function gainOf({ channels, data }: Pixels, ring: readonly number[], seen: (i: number) => Uint8Array): number[] {
  const own = [0, 0, 0];
  const other = [0, 0, 0];
  for (const i of ring) {
    const colour = seen(i);
    for (let c = 0; c < 3; c++) {
      own[c]! += data[i * channels + (channels === 1 ? 0 : c)]!;
      other[c]! += colour[c]!;
    }
  }
  return own.map((sum, c) => (other[c]! > 0 ? sum / other[c]! : 1));
}

function boxOf(outline: Polygon, room: number): { left: number; top: number; right: number; bottom: number } {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  return { left: Math.min(...xs) - room, top: Math.min(...ys) - room, right: Math.max(...xs) + room, bottom: Math.max(...ys) + room };
}

/** How far a point is from a polygon, px; 0 inside (even–odd rule). */
function gapTo(outline: Polygon, x: number, y: number): number {
  let inside = false;
  let nearest = Infinity;
  outline.forEach(([x1, y1], k) => {
    const [x2, y2] = outline[(k + 1) % outline.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((x2 - x1) * (y - y1)) / (y2 - y1)) inside = !inside;
    const along = ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / ((x2 - x1) ** 2 + (y2 - y1) ** 2 || 1);
    const t = Math.max(0, Math.min(1, along));
    nearest = Math.min(nearest, Math.hypot(x - x1 - t * (x2 - x1), y - y1 - t * (y2 - y1)));
  });
  return inside ? 0 : nearest;
}

function threeChannels({ width, height, channels, data }: Pixels): Pixels {
  const out = new Uint8Array(3 * width * height);
  for (let i = 0; i < width * height; i++) for (let c = 0; c < 3; c++) out[3 * i + c] = data[i * channels + (channels === 1 ? 0 : c)]!;
  return { width, height, channels: 3, data: out };
}
