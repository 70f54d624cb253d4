import { median } from '../numeric/index.ts';
import { BENDABLE_MM, LIMITS, type Ask, type PadFit, type Reason } from './answer.ts';
import { familyOf, levelOf, type Family, type Fillets } from './goals.ts';
import type { Land } from './lands.ts';
import type { PartKind, Point } from './pattern.ts';
import { boxOf, type Box } from './polygon.ts';
import { overlapOf, shared, type Partners, type Worked } from './seat.ts';

/** Least distance between the middles of lands of different pins, mm; Infinity for fewer than two. */
export function pitchOf(lands: readonly Land[]): number {
  let least = Infinity;
  lands.forEach((a, i) => lands.slice(i + 1).forEach((b) => (least = Math.min(least, Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1])))));
  return least;
}

/** Lands of the part over those of the place. */
export function fitPads(seat: Worked, partners: Partners): PadFit[] {
  const { basis, kind } = seat.pattern;
  const family = basis === 'feet' ? familyOf(kind, kind === 'chip' ? lengthOf(seat.lands) : pitchOf(seat.lands)) : null;
  const middle = middleOf(seat.lands);
  return seat.lands.map((land, i) => onePad(land, partners[i]!, seat, outward(land, seat.lands, middle), family));
}

function onePad(land: Land, partners: readonly Land[], { pattern }: Worked, out: Point, family: Family | null): PadFit {
  const nearest = partners[0];
  const pins = land.names;
  if (!nearest) return { pins, onto: [], overlap: 0, offMm: [0, 0], bendMm: 0, room: null, level: null };
  const met = partners.filter((each) => shared(land, each) > 0);
  const below = met.length > 0 ? met : [nearest];
  const box = boxOf(below.flatMap(({ cover }) => cover));
  const room = roomOf(land.box, box, out);
  return {
    pins,
    onto: [...new Set(below.flatMap(({ names }) => names))],
    overlap: overlapOf(land, partners, pattern.basis),
    offMm: [(land.box.x1 + land.box.x2 - box.x1 - box.x2) / 2, (land.box.y1 + land.box.y2 - box.y1 - box.y2) / 2],
    bendMm: Math.hypot(toGo(land.box.x1, land.box.x2, box.x1, box.x2), toGo(land.box.y1, land.box.y2, box.y1, box.y2)),
    room,
    level: family && levelOf(room, family),
  };
}

/** How far the interval from a1 to a2 must move so that enough of the shorter one lies in the longer one. */
function toGo(a1: number, a2: number, b1: number, b2: number): number {
  const slack = (1 - LIMITS.overlap) * Math.min(a2 - a1, b2 - b1);
  const off = a2 - a1 <= b2 - b1 ? Math.max(b1 - a1, a2 - b2) : Math.max(a1 - b1, b2 - a2);
  return Math.max(0, off - slack);
}

/** The way from the body to the tip of a foot, along an axis. Of two terminals along the line between; else along the longer side. */
function outward(land: Land, lands: readonly Land[], middle: Point): Point {
  const way: Point = [land.at[0] - middle[0], land.at[1] - middle[1]];
  const [w, h] = [land.box.x2 - land.box.x1, land.box.y2 - land.box.y1];
  const alongX = lands.length === 2 || Math.abs(w - h) < 1e-6 ? Math.abs(way[0]) >= Math.abs(way[1]) : w > h;
  return alongX ? [way[0] < 0 ? -1 : 1, 0] : [0, way[1] < 0 ? -1 : 1];
}

function middleOf(lands: readonly Land[]): Point {
  const box = boxOf(lands.flatMap(({ cover }) => cover));
  return [(box.x1 + box.x2) / 2, (box.y1 + box.y2) / 2];
}

/** Over all terminals, along the longer way: the length of a chip. */
function lengthOf(lands: readonly Land[]): number {
  const box = boxOf(lands.flatMap(({ cover }) => cover));
  return Math.max(box.x2 - box.x1, box.y2 - box.y1);
}

/** How far the box below reaches beyond the one above at toe, heel and the narrower side. */
function roomOf(above: Box, below: Box, [outX, outY]: Point): Fillets {
  const [left, right] = [above.x1 - below.x1, below.x2 - above.x2];
  const [down, up] = [above.y1 - below.y1, below.y2 - above.y2];
  if (outX !== 0) return { toeMm: outX > 0 ? right : left, heelMm: outX > 0 ? left : right, sideMm: Math.min(down, up) };
  return { toeMm: outY > 0 ? up : down, heelMm: outY > 0 ? down : up, sideMm: Math.min(left, right) };
}

/** Kinds whose terminals stand where a drawing puts them, so that another pitch is another part. */
const HAS_PITCH = (kind: PartKind, lands: number): boolean =>
  (kind === 'connector' || kind === 'legs' ? lands >= 2 : lands >= 3) && kind !== 'wire-legs';

/** Neighbours of the part up to this much farther apart than the nearest two count as neighbours, too. */
const NEIGHBOURS = 1.05;

/**
 * How far neighbours of the part are apart, and what lies under them, mm; undefined where fewer than two terminals lie on pads of their own. What lies under is taken in the median, since the
 * least of many distances that were measured is always too short; and lands of one terminal together, so that copper which is split in two is no other pitch.
 */
function pitches(part: Worked, pads: readonly PadFit[]): { readonly partMm: number; readonly placeMm: number } | undefined {
  const own = part.lands.map(({ box }): Point => [(box.x1 + box.x2) / 2, (box.y1 + box.y2) / 2]);
  const under = own.map(([x, y], i): Point => [x - pads[i]!.offMm[0], y - pads[i]!.offMm[1]]);
  const apart = (at: readonly Point[], i: number, j: number): number => Math.hypot(at[i]![0] - at[j]![0], at[i]![1] - at[j]![1]);
  const pairs = pads.flatMap((a, i) =>
    pads.slice(i + 1).flatMap((b, k) => {
      const j = i + 1 + k;
      const isShared = a.room === null || b.room === null || a.onto.some((name) => b.onto.includes(name));
      return isShared ? [] : [{ partMm: apart(own, i, j), placeMm: apart(under, i, j) }];
    }),
  );
  const partMm = Math.min(...pairs.map((pair) => pair.partMm));
  if (!Number.isFinite(partMm)) return undefined;
  return { partMm, placeMm: median(pairs.filter((pair) => pair.partMm <= NEIGHBOURS * partMm).map((pair) => pair.placeMm)) };
}

/**
 * Another pitch, if it is one by both: the nearest lands of the place, and those that belong to neighbours of the part. The first alone would be misled by copper that is split in two and by noise
 * of measuring, the second by another order of pins.
 */
function pitchReason(part: Worked, place: Worked, pads: readonly PadFit[]): Reason | undefined {
  if (!HAS_PITCH(part.pattern.kind, part.lands.length)) return undefined;
  const used = place.lands.filter(({ names }) => pads.some(({ onto }) => onto.some((name) => names.includes(name))));
  const differs = (a: number, b: number): boolean => Math.abs(a - b) > LIMITS.pitch * Math.min(a, b);
  const [pitch, nearest] = [pitches(part, pads), pitchOf(used)];
  if (!pitch || !Number.isFinite(nearest)) return undefined;
  return differs(pitch.partMm, pitch.placeMm) && differs(pitchOf(part.lands), nearest) ? { code: 'other-pitch', ...pitch } : undefined;
}

/** What the lands say against it. */
export function padReasons(part: Worked, place: Worked, pads: readonly PadFit[]): Reason[] {
  const { kind, basis } = part.pattern;
  const pitch = pitchReason(part, place, pads);
  if (pitch) return [pitch];
  return pads.flatMap((pad): Reason[] => {
    if (pad.room === null || pad.overlap >= LIMITS.overlap) return [];
    const far: Reason = { code: 'pad-off', pins: pad.pins, byMm: Math.hypot(...pad.offMm) };
    const bendable = pad.bendMm <= BENDABLE_MM[kind]!;
    if (basis === 'lands') return pad.overlap < LIMITS.doubtful || pad.bendMm > BENDABLE_OF_LANDS_MM ? [far] : [];
    if (!bendable) return [far];
    return pad.bendMm <= LIMITS.noBendMm ? [{ code: 'foot-too-large', pins: pad.pins }] : [];
  });
}

/** Lands that lie this far apart cannot be those of the same feet, mm. Common practice, no source. */
const BENDABLE_OF_LANDS_MM = 0.5;

/** Lands that cover each other in part say nothing of the feet: they have to be measured. */
export function feetAsk(part: Worked, pads: readonly PadFit[]): Ask[] {
  if (part.pattern.basis === 'feet') return [];
  const doubtful = pads.filter(({ room, overlap }) => room !== null && overlap < LIMITS.overlap);
  if (doubtful.length === 0) return [];
  return [
    { code: 'feet', decides: true, pins: doubtful.flatMap(({ pins }) => pins), byMm: Math.max(...doubtful.map(({ bendMm }) => bendMm)) },
  ];
}

/** Lands of the part that lie on a conductor that is not theirs. */
export function strayReasons(seat: Worked, place: Worked, partners: Partners): Reason[] {
  return seat.lands.flatMap((land, i): Reason[] => {
    if (partners[i]!.length === 0) return [];
    const others = place.lands.filter((each) => !partners[i]!.includes(each));
    const hit = others.filter((each) => shared(land, each) > LIMITS.stray * Math.min(land.areaMm2, each.areaMm2));
    return hit.length > 0 ? [{ code: 'touches-other', pins: land.names, onto: hit.flatMap(({ names }) => names) }] : [];
  });
}
