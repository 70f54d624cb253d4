import { holesOf, type Hole } from './holes.ts';
import { landsOf, type Land } from './lands.ts';
import type { Pattern, Placing, Point } from './pattern.ts';
import { boxesMeet, boxOf, sharedArea, type Piece } from './polygon.ts';
import { placed, turner } from './turn.ts';

/** A pattern with its lands and holes worked out. */
export interface Worked {
  readonly pattern: Pattern;
  readonly lands: readonly Land[];
  readonly holes: readonly Hole[];
}

export const worked = (pattern: Pattern): Worked => ({ pattern, lands: landsOf(pattern), holes: holesOf(pattern) });

/** The same, laid over a place. */
export function seated({ pattern, lands, holes }: Worked, placing: Placing): Worked {
  const turn = turner(placing.turnDeg);
  const isQuarter = placing.turnDeg % 90 === 0;
  const over = lazily(() => placed(pattern, placing));
  return {
    get pattern() {
      return over();
    },
    lands: lands.map((land) => seatLand(land, placing, turn, isQuarter)),
    holes: holes.length === 0 ? holes : holesOf(over()),
  };
}

/** A value that is worked out when first asked for. */
function lazily<T>(work: () => T): () => T {
  let done: { readonly value: T } | undefined;
  return () => (done ??= { value: work() }).value;
}

/** A land turned and moved. Its cover is worked out when first looked at: most lands never meet another. */
function seatLand(land: Land, { dxMm, dyMm }: Placing, turn: (point: Point) => Point, isQuarter: boolean): Land {
  const at = (point: Point): Point => {
    const [x, y] = turn(point);
    return [x + dxMm, y + dyMm];
  };
  const coverNow = (): Piece[] => land.cover.map((piece) => piece.map(at));
  const box = isQuarter ? boxOf([[at([land.box.x1, land.box.y1]), at([land.box.x2, land.box.y2])]]) : boxOf(coverNow());
  const cover = lazily(coverNow);
  return {
    names: land.names,
    areaMm2: land.areaMm2,
    side: land.side,
    hasHole: land.hasHole,
    box,
    at: [(box.x1 + box.x2) / 2, (box.y1 + box.y2) / 2],
    get cover() {
      return cover();
    },
  };
}

/** For each land of the part the lands of the place that it belongs on; nearest first. */
export type Partners = readonly (readonly Land[])[];

const farness = (a: Land, b: Land): number => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);

/** Lands of one conductor together. */
export function byConductor(lands: readonly Land[], conductor: (name: string) => string): Map<string, Land[]> {
  const groups = new Map<string, Land[]>();
  for (const land of lands) {
    const key = conductor(land.names[0]!);
    const group = groups.get(key);
    if (group) group.push(land);
    else groups.set(key, [land]);
  }
  return groups;
}

/** Partners by the names of pins: all lands of the same conductor. */
export function partnersByName(part: readonly Land[], place: readonly Land[], conductor: (name: string) => string): Partners {
  const groups = byConductor(place, conductor);
  return part.map((land) => [...(groups.get(conductor(land.names[0]!)) ?? [])].sort((a, b) => farness(land, a) - farness(land, b)));
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
