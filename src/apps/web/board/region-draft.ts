import type { Region } from '../../../bench/events/index.ts';
import type { DrawnPart } from './drawn-part.ts';
import type { Place } from './frame.ts';

type Corners = Region['polygon'];

/** An area while it is drawn. A rectangle is kept by two opposite corners. */
export interface RegionDraft {
  readonly shape: 'rectangle' | 'corners';
  readonly corners: Corners;
}

export const EMPTY_DRAFT: RegionDraft = { shape: 'rectangle', corners: [] };

const tenth = (mm: number): number => Math.round(mm * 10) / 10;
const corner = ({ x, y }: Place, size: Place): [number, number] => [
  tenth(Math.min(Math.max(x, 0), size.x)),
  tenth(Math.min(Math.max(y, 0), size.y)),
];

/** The draft after a tap: of a rectangle two taps are opposite corners and a third begins anew; else one more corner. `size` is that of the board. */
export function tapped(draft: RegionDraft, at: Place, size: Place): RegionDraft {
  const begun = draft.shape === 'rectangle' && draft.corners.length >= 2 ? [] : draft.corners;
  return { ...draft, corners: [...begun, corner(at, size)] };
}

/** The draft after a finger was drawn over the board. */
export const dragged = (from: Place, to: Place, size: Place): RegionDraft => ({
  shape: 'rectangle',
  corners: [corner(from, size), corner(to, size)],
});

/** The corners of the area all around; fewer than three while it is not one yet. */
export function polygonOf({ shape, corners }: RegionDraft): Corners {
  const [a, b] = corners;
  if (shape === 'corners' || !a || !b) return corners;
  return [
    [a[0], a[1]],
    [b[0], a[1]],
    [b[0], b[1]],
    [a[0], b[1]],
  ];
}

/** Left, bottom, width and height of a rectangle, mm; zeros while there is none. */
export function boxOf({ corners: [a = [0, 0], b = a] }: RegionDraft): { left: number; bottom: number; width: number; height: number } {
  const [left, bottom] = [Math.min(a[0], b[0]), Math.min(a[1], b[1])];
  return { left, bottom, width: tenth(Math.abs(a[0] - b[0])), height: tenth(Math.abs(a[1] - b[1])) };
}

export const fromBox = ({ left, bottom, width, height }: ReturnType<typeof boxOf>): RegionDraft => ({
  shape: 'rectangle',
  corners: [
    [left, bottom],
    [tenth(left + width), tenth(bottom + height)],
  ],
});

/** The block that most of an area is of: that of most parts inside, else of the part nearest to its middle. Null on a board without parts. */
export function blockUnder(parts: readonly DrawnPart[], { side, polygon }: Region): string | null {
  const here = parts.filter((part) => part.side === side);
  const inside = here.filter((part) => isInside(part, polygon));
  const counts = new Map<string, number>();
  for (const { block } of inside) counts.set(block, (counts.get(block) ?? 0) + 1);
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  if (most) return most[0];
  const middle = { x: mean(polygon.map(([x]) => x)), y: mean(polygon.map(([, y]) => y)) };
  const away = (part: DrawnPart): number => Math.hypot(part.x - middle.x, part.y - middle.y);
  return here.toSorted((a, b) => away(a) - away(b))[0]?.block ?? null;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Even–odd rule along a ray to the right. */
function isInside({ x, y }: Place, polygon: Corners): boolean {
  let inside = false;
  polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((x2 - x1) * (y - y1)) / (y2 - y1)) inside = !inside;
  });
  return inside;
}
