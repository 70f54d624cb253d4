import type { Box } from './vision-defects.ts';

/** An element of a board file: where it stands, mm and degrees counter-clockwise, and what its package draws about its origin. */
export interface BoardElement {
  readonly name: string;
  readonly value: string;
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
  /** On the lower side. */
  readonly mirrored: boolean;
  readonly package: PackageExtent;
}

/** Extents about the origin of a package, mm: left, lower, right, upper. */
export interface PackageExtent {
  /** Of its soldered lands on the surface. */
  readonly lands?: Box;
  /** Of its lands, drilled pads and holes. */
  readonly copper?: Box;
  /** Of each drilled pad of 3 mm and more: as good as a hole to look at. */
  readonly wide: readonly Box[];
  /** Of what the solder mask leaves bare beyond its lands. */
  readonly bare?: Box;
  /** Of the outline drawn on its silkscreen and documentation layers. */
  readonly drawn?: Box;
}

/** The elements of a board file (XML), in its order. */
export function boardElements(text: string): BoardElement[] {
  const extents = packageExtents(text);
  return [...text.matchAll(/<element [^>]*>/g)].flatMap(([tag]): BoardElement[] => {
    const turn = /^(M?)R(\d+(?:\.\d+)?)$/.exec(attribute(tag, 'rot') || 'R0');
    const extent = extents.get(`${attribute(tag, 'library')}/${attribute(tag, 'package')}`);
    if (!turn || !extent) return [];
    return [
      {
        name: attribute(tag, 'name'),
        value: attribute(tag, 'value'),
        x: Number(attribute(tag, 'x')),
        y: Number(attribute(tag, 'y')),
        turnDeg: Number(turn[2]),
        mirrored: turn[1] === 'M',
        package: extent,
      },
    ];
  });
}

/** A box of a package as it lies on the board: the box around it once turned, mirrored and moved, mm. */
export function placedBox({ x, y, turnDeg, mirrored }: BoardElement, [left, lower, right, upper]: Box): Box {
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const corners = [
    [left, lower],
    [right, lower],
    [left, upper],
    [right, upper],
  ].map(([u, v]) => {
    const turned = [u! * cos - v! * sin, u! * sin + v! * cos] as const;
    return [x + (mirrored ? -turned[0] : turned[0]), y + turned[1]] as const;
  });
  return around(corners.map(([u, v]) => [u, v, u, v]))!;
}

const attribute = (tag: string, name: string): string => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
const number = (tag: string, name: string): number => Number(attribute(tag, name));

/** Layers of the upper silkscreen and of documentation, and of the upper openings of the mask. */
const DRAWN_LAYERS = ['21', '51'];
const MASK_LAYERS = ['29'];

function packageExtents(text: string): Map<string, PackageExtent> {
  const extents = new Map<string, PackageExtent>();
  for (const [, library, body] of text.matchAll(/<library name="([^"]*)"[^>]*>([\s\S]*?)<\/library>/g))
    for (const [, name, inner] of body!.matchAll(/<package name="([^"]*)"[^>]*>([\s\S]*?)<\/package>/g)) {
      const lands = tags(inner!, 'smd').map(landOf);
      const surface = around(lands);
      const copper = around([...lands, ...tags(inner!, 'pad').map(padOf), ...tags(inner!, 'hole').map(holeOf)]);
      const wiresOn = (layers: readonly string[]): Box[] =>
        tags(inner!, 'wire')
          .filter((tag) => layers.includes(attribute(tag, 'layer')))
          .map(wireOf);
      const drawn = around(wiresOn(DRAWN_LAYERS));
      const bare = around(wiresOn(MASK_LAYERS));
      extents.set(`${library}/${name}`, {
        ...(surface && { lands: surface }),
        ...(copper && { copper }),
        ...(drawn && { drawn }),
        ...(bare && { bare }),
        wide: tags(inner!, 'pad')
          .filter((tag) => number(tag, 'drill') >= 3)
          .map(padOf),
      });
    }
  return extents;
}

const tags = (text: string, name: string): string[] => [...text.matchAll(new RegExp(`<${name} [^>]*>`, 'g'))].map(([tag]) => tag);

function landOf(tag: string): Box {
  const [x, y, dx, dy] = ['x', 'y', 'dx', 'dy'].map((name) => number(tag, name)) as [number, number, number, number];
  const lies = attribute(tag, 'rot') === 'R90' || attribute(tag, 'rot') === 'R270';
  const [w, h] = lies ? [dy, dx] : [dx, dy];
  return [x - w / 2, y - h / 2, x + w / 2, y + h / 2];
}

const discOf = (x: number, y: number, across: number): Box => [x - across / 2, y - across / 2, x + across / 2, y + across / 2];
const holeOf = (tag: string): Box => discOf(number(tag, 'x'), number(tag, 'y'), number(tag, 'drill'));

/** A drilled pad without a diameter of its own is drawn with a rim of a quarter of its hole on each side. */
const padOf = (tag: string): Box => discOf(number(tag, 'x'), number(tag, 'y'), number(tag, 'diameter') || 1.5 * number(tag, 'drill'));

const wireOf = (tag: string): Box => {
  const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((name) => number(tag, name)) as [number, number, number, number];
  const half = number(tag, 'width') / 2;
  return [Math.min(x1, x2) - half, Math.min(y1, y2) - half, Math.max(x1, x2) + half, Math.max(y1, y2) + half];
};

function around(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  return [0, 1, 2, 3].map((k) => (k < 2 ? Math.min : Math.max)(...boxes.map((box) => box[k]!))) as unknown as Box;
}
