import { PLAIN_PAD, UNKNOWN, type Drill, type Pad, type PadKind, type PadShape, type Pattern, type Point } from '../pattern.ts';
import { turnPoint } from '../turn.ts';
import { kindFromWords } from './kind-from-words.ts';
import { isList, problemAt, readList, type List, type Node, type TextProblem } from './s-expression.ts';

export type ReadPattern = { readonly ok: true; readonly pattern: Pattern } | TextProblem;

/** What is wrong at a node; told with line and column by `readKicadMod`. */
class Trouble extends Error {
  constructor(
    readonly at: number,
    message: string,
  ) {
    super(message);
  }
}

const KINDS: Readonly<Record<string, PadKind>> = { smd: 'surface', connect: 'surface', thru_hole: 'through', np_thru_hole: 'peg' };
const SHAPES: Readonly<Record<string, PadShape>> = {
  rect: 'rect',
  roundrect: 'round-rect',
  oval: 'oval',
  circle: 'circle',
  trapezoid: 'outline',
  custom: 'outline',
};
/** Share of the smaller side that a corner takes where the file does not say (format of KiCad, from memory). */
const CORNER_SHARE = 0.25;

/**
 * A land pattern from the text of a `.kicad_mod` file, the older `module` and the newer `footprint`. x goes right and y, turned about, up; mm. Pads that only print
 * paste are left out, and nets are read where it tells them. Line and column of what cannot be read.
 */
export function readKicadMod(text: string): ReadPattern {
  const read = readList(text);
  if (!read.ok) return read;
  try {
    return { ok: true, pattern: patternOf(read.list) };
  } catch (trouble) {
    if (trouble instanceof Trouble) return problemAt(text, trouble.at, trouble.message);
    throw trouble;
  }
}

function patternOf(list: List): Pattern {
  const [head, name] = list.items;
  const form = wordIn(head);
  if (form !== 'footprint' && form !== 'module') throw new Trouble(list.at, `begins with "${form}", not with footprint or module`);
  const pads = childrenOf(list, 'pad').flatMap(padOf);
  const words = ['descr', 'tags'].flatMap((key) => childrenOf(list, key).map((child) => wordIn(child.items[1])));
  const title = wordIn(name);
  const kind = kindFromWords([title, ...words].join(' '), pads);
  return { ...UNKNOWN, name: title, kind, basis: 'lands', numbered: true, nets: netsOf(list), pads };
}

/** Net by pin, where the pattern was taken out of a board: `(net 4 "GND")`, in the newest form `(net "GND")`. */
function netsOf(list: List): Record<string, string> {
  const nets: Record<string, string> = {};
  for (const pad of childrenOf(list, 'pad')) {
    const net = childrenOf(pad, 'net')[0]?.items.at(-1);
    const pin = wordIn(pad.items[1]);
    if (pin !== '' && wordIn(net) !== '') nets[pin] = wordIn(net);
  }
  return nets;
}

function padOf(list: List): Pad[] {
  const [, name, type, form] = list.items;
  const kind = lookUp(KINDS, type, 'is no type of pad');
  const shape = lookUp(SHAPES, form, 'is no shape of pad');
  if (childrenOf(list, 'layers').length === 0) throw new Trouble(list.at, 'has no "layers"');
  const layers = childrenOf(list, 'layers').flatMap(({ items }) => items.slice(1).map(wordIn));
  if (kind === 'surface' && !layers.some((layer) => layer.endsWith('.Cu'))) return [];
  const [x, y, turn = 0] = numbersOf(list, 'at', 2, 3);
  const [w, h] = numbersOf(list, 'size', 2, 2);
  if (!(w! > 0 && h! > 0)) throw new Trouble(list.at, 'has a size that is not above zero');
  const drill = drillOf(list);
  const [dx, dy] = turnPoint(drill ? [-drill.dxMm, -drill.dyMm] : [0, 0], turn);
  const pad = { ...PLAIN_PAD, name: wordIn(name), kind, shape, xMm: x! + dx, yMm: dy - y!, wMm: w!, hMm: h!, turnDeg: turn, drill };
  const side = layers.includes('F.Cu') || layers.includes('*.Cu') || layers.includes('F&B.Cu') ? 'front' : 'back';
  return [
    {
      ...pad,
      side: kind === 'surface' ? side : 'front',
      cornerMm: cornerOf(list, shape, w!, h!),
      rings: ringsOf(list, wordIn(form), w!, h!),
    },
  ];
}

function cornerOf(list: List, shape: PadShape, w: number, h: number): number {
  if (shape !== 'round-rect') return 0;
  const [share] = childrenOf(list, 'roundrect_rratio').length > 0 ? numbersOf(list, 'roundrect_rratio', 1, 1) : [CORNER_SHARE];
  return share! * Math.min(w, h);
}

/** `(drill [oval] w [h] [(offset x y)])`: the place of the pad is that of its hole and the copper is off, so here the hole is off the other way. */
function drillOf(list: List): Drill | null {
  const [drill] = childrenOf(list, 'drill');
  if (!drill) return null;
  const sizes = drill.items.slice(1).filter((item) => !isList(item) && wordIn(item) !== 'oval');
  if (sizes.length === 0) return null;
  const [w, h = w] = sizes.map(numberIn);
  if (!(w! > 0 && h! > 0)) throw new Trouble(drill.at, 'is a hole whose size is not above zero');
  const [ox, oy] = childrenOf(drill, 'offset').length > 0 ? numbersOf(drill, 'offset', 2, 2) : [0, 0];
  return { wMm: w!, hMm: h!, dxMm: 0 - ox!, dyMm: oy! };
}

/** Rings of copper: of a trapezoid, and of a shape of its own with the pad that it grows from. Lines and arcs of such a shape are left out. */
function ringsOf(list: List, form: string, w: number, h: number): Point[][] {
  if (form === 'trapezoid') return [trapezoid(list, w, h)];
  if (form !== 'custom') return [];
  const polygons = childrenOf(list, 'primitives').flatMap((primitives) => childrenOf(primitives, 'gr_poly').map(polygonOf));
  return [anchor(list, w, h), ...polygons];
}

function trapezoid(list: List, w: number, h: number): Point[] {
  const [dh, dw] = childrenOf(list, 'rect_delta').length > 0 ? numbersOf(list, 'rect_delta', 2, 2) : [0, 0];
  const [x, y] = [w / 2, h / 2];
  return [
    [-x - dw! / 2, -y - dh! / 2],
    [x + dw! / 2, -y + dh! / 2],
    [x - dw! / 2, y - dh! / 2],
    [-x + dw! / 2, y + dh! / 2],
  ];
}

function anchor(list: List, w: number, h: number): Point[] {
  const round = childrenOf(list, 'options').some((options) =>
    childrenOf(options, 'anchor').some(({ items }) => wordIn(items[1]) === 'circle'),
  );
  if (!round)
    return [
      [-w / 2, -h / 2],
      [w / 2, -h / 2],
      [w / 2, h / 2],
      [-w / 2, h / 2],
    ];
  const steps = 32;
  return Array.from({ length: steps }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / steps;
    return [(w / 2) * Math.cos(angle), (w / 2) * Math.sin(angle)];
  });
}

const polygonOf = (polygon: List): Point[] =>
  childrenOf(polygon, 'pts').flatMap((pts) =>
    childrenOf(pts, 'xy').map((xy): Point => {
      const [x, y] = xy.items.slice(1).map(numberIn);
      if (x === undefined || y === undefined) throw new Trouble(xy.at, 'is a point without two numbers');
      return [x, 0 - y];
    }),
  );

function childrenOf({ items }: List, name: string): List[] {
  return items.filter((item): item is List => isList(item) && !isList(item.items[0]) && wordIn(item.items[0]) === name);
}

const wordIn = (node: Node | undefined): string => (node && !isList(node) ? node.text : '');

function lookUp<T>(table: Readonly<Record<string, T>>, node: Node | undefined, message: string): T {
  const word = wordIn(node);
  if (!Object.hasOwn(table, word)) throw new Trouble(node?.at ?? 0, `"${word}" ${message}; known are ${Object.keys(table).join(', ')}`);
  return table[word]!;
}

function numberIn(node: Node): number {
  const value = Number(wordIn(node) || 'x');
  if (!Number.isFinite(value)) throw new Trouble(node.at, `"${wordIn(node)}" is not a number`);
  return value;
}

function numbersOf(list: List, name: string, least: number, most: number): number[] {
  const [child] = childrenOf(list, name);
  if (!child) throw new Trouble(list.at, `has no "${name}"`);
  const numbers = child.items
    .slice(1)
    .filter((item) => !isList(item) && !/^[a-z]+$/.test(wordIn(item)))
    .map(numberIn);
  if (numbers.length < least || numbers.length > most) throw new Trouble(child.at, `"${name}" has ${numbers.length} numbers, not ${least}`);
  return numbers;
}
