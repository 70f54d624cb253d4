import { holesOf, type Hole } from './holes.ts';
import { landsOf, type Land } from './lands.ts';
import type { Pattern, Placing, Point } from './pattern.ts';
import { boxOf, sharedArea, boxesMeet } from './polygon.ts';
import { placed, turnPoint } from './turn.ts';

/** A pattern with its lands and holes worked out. */
export interface Worked {
  readonly pattern: Pattern;
  readonly lands: readonly Land[];
  readonly holes: readonly Hole[];
}

export const worked = (pattern: Pattern): Worked => ({ pattern, lands: landsOf(pattern), holes: holesOf(pattern) });

/** The same, laid over a place. */
export function seated({ pattern, lands }: Worked, placing: Placing): Worked {
  const at = (point: Point): Point => {
    const [x, y] = turnPoint(point, placing.turnDeg);
    return [x + placing.dxMm, y + placing.dyMm];
  };
  const moved = lands.map((land) => {
    const cover = land.cover.map((piece) => piece.map(at));
    const box = boxOf(cover);
    return { ...land, cover, box, at: [(box.x1 + box.x2) / 2, (box.y1 + box.y2) / 2] as Point };
  });
  const pattern2 = placed(pattern, placing);
  return { pattern: pattern2, lands: moved, holes: holesOf(pattern2) };
}

/** For each land of the part the lands of the place that it belongs on; nearest first. */
export type Partners = readonly (readonly Land[])[];

const farness = (a: Land, b: Land): number => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);

/** Partners by the names of pins: all lands of the same conductor. */
export function partnersByName(part: readonly Land[], place: readonly Land[], conductor: (name: string) => string): Partners {
  const byConductor = new Map<string, Land[]>();
  for (const land of place) {
    const key = conductor(land.names[0]!);
    byConductor.set(key, [...(byConductor.get(key) ?? []), land]);
  }
  return part.map((land) => [...(byConductor.get(conductor(land.names[0]!)) ?? [])].sort((a, b) => farness(land, a) - farness(land, b)));
}

const sameSide = (a: Land, b: Land): boolean => a.side === b.side || a.hasHole || b.hasHole;

export const shared = (a: Land, b: Land): number => (sameSide(a, b) && boxesMeet(a.box, b.box, 0) ? sharedArea(a.cover, b.cover) : 0);

/** Shared area over the smaller of the part's land and what of the place lies under it; of a foot over the foot. */
export function overlapOf(land: Land, partners: readonly Land[], basis: Pattern['basis']): number {
  const met = partners.map((each) => ({ each, area: shared(land, each) })).filter(({ area }) => area > 0);
  const below = met.reduce((sum, { each }) => sum + each.areaMm2, 0);
  const covered = met.reduce((sum, { area }) => sum + area, 0);
  const whole = basis === 'feet' ? land.areaMm2 : Math.min(land.areaMm2, below);
  return covered === 0 ? 0 : Math.min(1, covered / whole);
}
