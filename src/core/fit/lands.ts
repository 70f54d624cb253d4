import { padCover } from './pad-cover.ts';
import type { Pad, Pattern, Point } from './pattern.ts';
import { areaOf, boxesMeet, boxOf, touches, unionOf, type Box, type Piece } from './polygon.ts';

/** Pads of one pattern whose copper touches: one land, whatever the pins are called. */
export interface Land {
  readonly names: readonly string[];
  /** Without overlaps. */
  readonly cover: readonly Piece[];
  readonly areaMm2: number;
  readonly box: Box;
  /** The middle of the box. */
  readonly at: Point;
  readonly side: Pad['side'];
  readonly hasHole: boolean;
}

/** Copper this near is joined, mm: patterns are written to a micrometre. */
const JOINED_MM = 0.002;

/** Less is no copper, mm²: an outline whose corners lie on a line. */
const NO_AREA_MM2 = 1e-6;

/** The lands of a pattern: copper with a name, touching pads as one. Pegs, nameless copper and outlines without area are none. */
export function landsOf(pattern: Pattern): Land[] {
  const pads = pattern.pads.filter(({ kind, name }) => kind !== 'peg' && name !== '');
  const covers = pads.map(padCover);
  const boxes = covers.map(boxOf);
  const group = grouping(pads.length);
  for (let a = 0; a < pads.length; a++)
    for (let b = a + 1; b < pads.length; b++) {
      if (pads[a]!.side !== pads[b]!.side && pads[a]!.kind === 'surface' && pads[b]!.kind === 'surface') continue;
      if (!boxesMeet(boxes[a]!, boxes[b]!, JOINED_MM) || group.of(a) === group.of(b)) continue;
      if (covers[a]!.some((one) => covers[b]!.some((other) => touches(one, other, JOINED_MM)))) group.join(a, b);
    }
  const lands = group.all().map((members) =>
    landOf(
      members.map((i) => pads[i]!),
      members.map((i) => covers[i]!),
    ),
  );
  return lands.filter(({ areaMm2 }) => areaMm2 > NO_AREA_MM2);
}

function landOf(pads: readonly Pad[], covers: readonly Piece[][]): Land {
  const cover = covers.length === 1 ? covers[0]! : unionOf(covers);
  const box = boxOf(cover);
  return {
    names: [...new Set(pads.map(({ name }) => name))],
    cover,
    areaMm2: areaOf(cover),
    box,
    at: [(box.x1 + box.x2) / 2, (box.y1 + box.y2) / 2],
    side: pads[0]!.side,
    hasHole: pads.some(({ drill }) => drill !== null),
  };
}

/** Sets of numbers below `count` that are joined pair by pair. */
export function grouping(count: number) {
  const parent = Array.from({ length: count }, (_, i) => i);
  const of = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root]!;
    parent[i] = root;
    return root;
  };
  return {
    of,
    join: (a: number, b: number): void => void (parent[of(a)] = of(b)),
    all: (): number[][] => {
      const groups = new Map<number, number[]>();
      for (let i = 0; i < count; i++) groups.set(of(i), [...(groups.get(of(i)) ?? []), i]);
      return [...groups.values()];
    },
  };
}

/**
 * Which names mean the same conductor: names that share a land in either pattern, or a net. The answer gives one name
 * for all that are joined; a name that neither pattern has stands for itself.
 */
export function conductors(patterns: readonly Pattern[], lands: readonly (readonly Land[])[]): (name: string) => string {
  const names = [...new Set(lands.flat().flatMap((land) => land.names))].sort();
  const index = new Map(names.map((name, i) => [name, i]));
  const group = grouping(names.length);
  const joinAll = (together: readonly string[]): void => {
    for (const name of together.slice(1)) if (index.has(name)) group.join(index.get(name)!, index.get(together[0]!)!);
  };
  for (const land of lands.flat()) joinAll(land.names);
  for (const { nets } of patterns)
    for (const net of new Set(Object.values(nets))) joinAll(names.filter((name) => Object.hasOwn(nets, name) && nets[name] === net));
  return (name) => (index.has(name) ? names[group.of(index.get(name)!)]! : name);
}
