import { LIMITS, type Ask, type HoleFit, type Reason } from './answer.ts';
import { nearestPairs, type Hole } from './holes.ts';

/** Legs and pegs over the holes of the place, each over the nearest. */
export function fitHoles(part: readonly Hole[], place: readonly Hole[]): HoleFit[] {
  const pairs = new Map(
    nearestPairs(
      part.map(({ at }) => at),
      place.map(({ at }) => at),
    ),
  );
  return part.map((hole, i) => oneHole(hole, pairs.has(i) ? place[pairs.get(i)!] : undefined));
}

function oneHole(own: Hole, other: Hole | undefined): HoleFit {
  const { name, kind } = own;
  const off = other && ([own.at[0] - other.at[0], own.at[1] - other.at[1]] as const);
  if (!other || !off || Math.hypot(...off) > LIMITS.nearHoleMm) return { name, kind, offMm: null, bendMm: 0, tighterMm: 0 };
  const tighter = [own.wMm - other.wMm, own.hMm - other.hMm] as const;
  const play = kind === 'peg' ? LIMITS.pegPlayMm : LIMITS.legPlayMm;
  const beyond = off.map((way, axis) => Math.max(0, Math.abs(way) - play - Math.max(0, -tighter[axis]! / 2)));
  return { name, kind, offMm: off, bendMm: Math.hypot(...beyond), tighterMm: Math.max(...tighter) };
}

/** A micrometre and rounding. */
const SLACK_MM = 0.002;

/** What the holes say against it. */
export function holeReasons(holes: readonly HoleFit[], bendableMm: number): Reason[] {
  return holes.flatMap(({ name, kind, offMm, bendMm, tighterMm }): Reason[] => {
    if (!offMm) return [{ code: 'hole-missing', kind, name }];
    const tooSmall = kind === 'peg' ? LIMITS.pegTooSmallMm : LIMITS.legTooSmallMm;
    if (tighterMm > tooSmall + SLACK_MM) return [{ code: 'hole-too-small', kind, name, byMm: tighterMm }];
    if (bendMm > (kind === 'peg' ? 0 : bendableMm) + SLACK_MM) return [{ code: 'hole-off', kind, name, byMm: Math.hypot(...offMm) }];
    return [];
  });
}

/** Legs and pegs that have to be measured, since the hole is smaller than the part asks for. */
export function holeAsks(holes: readonly HoleFit[], place: readonly Hole[]): Ask[] {
  const least = (kind: Hole['kind']): number => Math.min(...place.filter((hole) => hole.kind === kind).map((h) => Math.min(h.wMm, h.hMm)));
  return (['peg', 'leg'] as const).flatMap((kind): Ask[] => {
    const limit = kind === 'peg' ? LIMITS.pegTighterMm : LIMITS.legTighterMm;
    const tight = holes.find((hole) => hole.kind === kind && hole.offMm && hole.tighterMm > limit + SLACK_MM);
    return tight ? [{ code: kind, decides: true, name: tight.name, mostMm: least(kind) }] : [];
  });
}
