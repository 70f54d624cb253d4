import { LIMITS } from './answer.ts';
import { nearestPairs } from './holes.ts';
import type { Placing, Point } from './pattern.ts';
import { byConductor, overlapOf, partnersByName, seated, type Partners, type Worked } from './seat.ts';

/** A placing with how well it does; larger is better, compared in order. */
export interface Trial {
  readonly placing: Placing;
  readonly on: 'holes' | 'pads' | 'nothing';
  readonly seat: Worked;
  readonly partners: Partners;
  readonly score: readonly [paired: number, least: number, mean: number];
}

/** How lands of the part find those of the place: by the names of pins, or by nearness where names say nothing. */
export type Matching = { readonly by: 'name'; readonly conductor: (name: string) => string } | { readonly by: 'place' };

const QUARTERS = [0, 90, 180, 270];
/** Below this a tilt is noise of measuring, degrees. */
const TILT_DEG = 0.3;
const STEPS_MM = [0.1, 0.05, 0.02];
const AROUND: readonly Point[] = [-1, 0, 1].flatMap((x) => [-1, 0, 1].map((y): Point => [x, y])).filter(([x, y]) => x !== 0 || y !== 0);

/** The best way to lay a part over a place: on holes when both have as many, else on pads; in quarters, and tilted where all pads say so. */
export function bestTrial(part: Worked, place: Worked, matching: Matching): Trial {
  const onHoles = part.holes.length > 0 && part.holes.length === place.holes.length;
  let best: Trial | undefined;
  for (const turnDeg of QUARTERS) {
    const start = seated(part, { turnDeg, dxMm: 0, dyMm: 0 });
    for (const placing of onHoles ? [onHolesAt(start, place, turnDeg)] : onPadsAt(start, place, matching, turnDeg)) {
      const trial = tryAt(part, place, matching, placing, onHoles ? 'holes' : 'pads');
      if (!best || better(trial, best)) best = trial;
      if (isPerfect(best, part)) return best;
    }
  }
  if (!best || best.on === 'holes' || best.score[0] < part.lands.length) return best!;
  return climb(part, place, matching, tilted(part, place, matching, best));
}

const isPerfect = ({ score: [paired, least] }: Trial, part: Worked): boolean => paired === part.lands.length && least > 1 - 1e-6;

function better(a: Trial, b: Trial): boolean {
  const at = a.score.findIndex((value, i) => Math.abs(value - b.score[i]!) > 1e-6);
  return at >= 0 && a.score[at]! > b.score[at]!;
}

function tryAt(part: Worked, place: Worked, matching: Matching, placing: Placing, on: Trial['on']): Trial {
  const seat = seated(part, placing);
  const partners = partnersOf(seat, place, matching);
  const paired = partners.filter(({ length }) => length > 0).length;
  const overlaps = seat.lands.flatMap((land, i) => (partners[i]!.length > 0 ? [overlapOf(land, partners[i]!, part.pattern.basis)] : []));
  const least = overlaps.length === 0 ? 0 : Math.min(...overlaps);
  const mean = overlaps.length === 0 ? 0 : overlaps.reduce((a, b) => a + b, 0) / overlaps.length;
  return { placing, on, seat, partners, score: [paired, least, mean] };
}

export function partnersOf(seat: Worked, place: Worked, matching: Matching): Partners {
  if (matching.by === 'name') return partnersByName(seat.lands, place.lands, matching.conductor);
  const pairs = new Map(
    nearestPairs(
      seat.lands.map(({ at }) => at),
      place.lands.map(({ at }) => at),
    ),
  );
  return seat.lands.map((_, i) => (pairs.has(i) ? [place.lands[pairs.get(i)!]!] : []));
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
const meanOf = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];

/** Holes on holes: first their middles, then each pair of nearest ones, until the pairs stay. */
function onHolesAt(start: Worked, place: Worked, turnDeg: number): Placing {
  const from = start.holes.map(({ at }) => at);
  const onto = place.holes.map(({ at }) => at);
  let shift = minus(meanOf(onto), meanOf(from));
  for (let round = 0; round < 3; round++) {
    const moved = from.map(([x, y]): Point => [x + shift[0], y + shift[1]]);
    const pairs = nearestPairs(moved, onto);
    shift = meanOf(pairs.map(([i, j]) => minus(onto[j]!, from[i]!)));
  }
  return { turnDeg, dxMm: shift[0], dyMm: shift[1] };
}

/** Two guesses: the median of the ways to go, which a single odd pad does not move, and the middle of them, which suits rows at another distance. */
function onPadsAt(start: Worked, place: Worked, matching: Matching, turnDeg: number): Placing[] {
  const ways = waysToGo(start, place, matching);
  if (ways.length === 0) return [{ turnDeg, dxMm: 0, dyMm: 0 }];
  const [xs, ys] = [ways.map(([x]) => x).sort((a, b) => a - b), ways.map(([, y]) => y).sort((a, b) => a - b)];
  return [
    { turnDeg, dxMm: median(xs), dyMm: median(ys) },
    { turnDeg, dxMm: (xs[0]! + xs.at(-1)!) / 2, dyMm: (ys[0]! + ys.at(-1)!) / 2 },
  ];
}

function waysToGo(start: Worked, place: Worked, matching: Matching): Point[] {
  if (matching.by === 'place') return nearWays(start, place);
  const [own, others] = [byConductor(start.lands, matching.conductor), byConductor(place.lands, matching.conductor)];
  // A conductor with several lands (a shell) says which way to go only through the middle of all of them.
  return [...own].flatMap(([conductor, lands]) => {
    const onto = others.get(conductor);
    return onto ? lands.map(() => minus(meanOf(onto.map(({ at }) => at)), meanOf(lands.map(({ at }) => at)))) : [];
  });
}

/** Without names: middle on middle, then nearest on nearest. */
function nearWays(start: Worked, place: Worked): Point[] {
  const [from, onto] = [start.lands.map(({ at }) => at), place.lands.map(({ at }) => at)];
  if (from.length === 0 || onto.length === 0) return [];
  let ways: Point[] = [minus(middleOf(onto), middleOf(from))];
  for (let round = 0; round < 3; round++) {
    const shift = meanOf(ways);
    const moved = from.map(([x, y]): Point => [x + shift[0], y + shift[1]]);
    ways = nearestPairs(moved, onto).map(([i, j]) => minus(onto[j]!, from[i]!));
  }
  return ways;
}

function middleOf(points: readonly Point[]): Point {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

function median(sorted: readonly number[]): number {
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}

/** The angle that is left between paired lands (least squares on two point sets, Schönemann 1966), degrees. */
function tiltOf({ seat, partners }: Trial): number {
  const pairs = seat.lands.flatMap((land, i) => (partners[i]!.length === 1 ? [[land.at, partners[i]![0]!.at] as const] : []));
  if (pairs.length < 3) return 0;
  const [from, onto] = [meanOf(pairs.map(([p]) => p)), meanOf(pairs.map(([, q]) => q))];
  const [dot, crossed] = pairs.reduce<[number, number]>(
    ([d, c], [p, q]) => {
      const [a, b] = [minus(p, from), minus(q, onto)];
      return [d + a[0] * b[0] + a[1] * b[1], c + a[0] * b[1] - a[1] * b[0]];
    },
    [0, 0],
  );
  return (Math.atan2(crossed, dot) * 180) / Math.PI;
}

function tilted(part: Worked, place: Worked, matching: Matching, best: Trial): Trial {
  const tilt = tiltOf(best);
  if (Math.abs(tilt) < TILT_DEG) return best;
  const turnDeg = best.placing.turnDeg + tilt;
  const start = seated(part, { turnDeg, dxMm: 0, dyMm: 0 });
  const others = onPadsAt(start, place, matching, turnDeg).map((placing) => tryAt(part, place, matching, placing, 'pads'));
  return others.reduce((a, b) => (better(b, a) ? b : a), best);
}

/** Small steps to a better overlap, for as long as there is one. */
function climb(part: Worked, place: Worked, matching: Matching, start: Trial): Trial {
  let best = start;
  if (best.score[1] >= LIMITS.overlap || best.score[1] === 0) return best;
  for (const step of STEPS_MM)
    for (let moved = true, left = 20; moved && left > 0; left--) {
      const { turnDeg, dxMm, dyMm } = best.placing;
      const tries = AROUND.map(([x, y]) =>
        tryAt(part, place, matching, { turnDeg, dxMm: dxMm + x * step, dyMm: dyMm + y * step }, best.on),
      );
      const next = tries.reduce((a, b) => (better(b, a) ? b : a), best);
      moved = next !== best;
      best = next;
    }
  return best;
}
