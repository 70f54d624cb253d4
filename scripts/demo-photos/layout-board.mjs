import { KINDS } from './part-kinds.mjs';
import { legendOf, lookOf, PREFIX } from './block-looks.mjs';
import { placeLabels } from './place-labels.mjs';
import { routeTracks } from './route-tracks.mjs';

const EDGE_MM = 1.4;

/**
 * A placement for a board of which only the middles of its blocks are known: the main part of each block stands at its
 * place (shifted where two would overlap), small parts around it, test points where the model puts them. The same model
 * gives the same board. Places are mm from the upper left corner, y downwards.
 */
export function layoutBoard(file, random) {
  const { width_mm: width, height_mm: height } = file.board;
  const board = { width, height, parts: [], holes: holesOf(width, height), fence: [] };
  for (const hole of board.holes) board.fence.push({ x: hole.x, y: hole.y, w: 5.6, h: 5.6 });
  const flip = ([x, y]) => [x, height - y];
  for (const point of file.points.filter((each) => each.at && each.side === 'front'))
    place(board, { kind: 'testPoint', block: point.block, point: point.id, label: point.id }, flip(point.at), 6);
  const blocks = file.blocks.filter((block) => block.at && lookOf(block.id).main);
  const bySize = (a, b) => area(lookOf(b.id).main) - area(lookOf(a.id).main);
  for (const block of [...blocks].sort(bySize)) place(board, mainOf(block), flip(block.at), 40);
  board.title = titlePlace(board);
  for (const block of blocks) for (const kind of lookOf(block.id).around) place(board, { kind, block: block.id }, flip(block.at), 26);
  sprinkle(board, random);
  number(board, random);
  placeLabels(board);
  return { ...board, ...routeTracks(board, random) };
}

/** A free strip for the name of the board, lowest first. */
function titlePlace(board) {
  const strip = { w: 15, h: 2.4 };
  for (let y = board.height - 4; y > 4; y -= 1)
    for (let x = board.width - strip.w / 2 - 2; x > strip.w / 2 + 2; x -= 1)
      if (isFree(board.fence, { x, y, ...strip })) {
        board.fence.push({ x, y, ...strip });
        return { x, y };
      }
  return { x: board.width / 2, y: board.height - 3 };
}

const area = (kind) => KINDS[kind].court[0] * KINDS[kind].court[1];

function mainOf(block) {
  const kind = lookOf(block.id).main;
  const label = /\b[A-Z]{1,2}\d\b/.exec(block.name)?.[0];
  return { kind, block: block.id, main: true, ...(label ? { label } : {}) };
}

function holesOf(width, height) {
  const inset = 3.6;
  return [
    { x: inset, y: inset },
    { x: width - inset, y: inset },
    { x: inset, y: height - inset },
    { x: width - inset, y: height - inset },
  ];
}

/** Puts a part at the free place nearest to where it is wanted, within `reach` mm; leaves it out when there is none. */
function place(board, part, [wantX, wantY], reach) {
  const spec = KINDS[part.kind];
  const turns = part.main ? turnsToEdge(board, part.kind, wantX, wantY) : [0, 90];
  const step = part.main ? 0.5 : 0.75;
  for (let ring = 0; ring <= reach / step; ring++)
    for (const [dx, dy] of ringPoints(ring, step))
      for (const turn of turns) {
        const turned = ([w, h]) => (turn % 180 === 0 ? { w, h } : { w: h, h: w });
        const { w, h } = turned(spec.court);
        const inset = EDGE_MM - (spec.overhang ?? 0);
        const x = clamp(wantX + dx, w / 2 + inset, board.width - w / 2 - inset);
        const y = clamp(wantY + dy, h / 2 + inset, board.height - h / 2 - inset);
        const fences = (spec.fence ?? [spec.court]).map((size) => ({ x, y, ...turned(size) }));
        if (Math.hypot(x - wantX, y - wantY) > reach || !fences.every((fence) => isFree(board.fence, fence))) continue;
        board.fence.push(...fences);
        board.parts.push({ ...part, x, y, turn });
        return true;
      }
  return false;
}

/** A socket opens towards the nearest edge; other parts lie flat. */
function turnsToEdge(board, kind, x, y) {
  if (!['jack', 'smallSocket', 'slideSwitch', 'flatSocket', 'smallFlat', 'wires', 'plug', 'wheel'].includes(kind)) return [0];
  const away = [
    [y, 0],
    [board.width - x, 90],
    [board.height - y, 180],
    [x, 270],
  ];
  return [away.sort((a, b) => a[0] - b[0])[0][1]];
}

const clamp = (value, low, high) => Math.min(Math.max(value, low), Math.max(low, high));

/** Places around the wanted one on a square of `ring` steps, nearest first. */
function ringPoints(ring, step) {
  const points = [];
  for (let i = -ring; i <= ring; i++)
    for (let j = -ring; j <= ring; j++) if (Math.max(Math.abs(i), Math.abs(j)) === ring) points.push([i * step, j * step]);
  return points.sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
}

/** Apart by at least 0.2 mm. */
const isFree = (fence, a) => fence.every((b) => Math.abs(a.x - b.x) * 2 >= a.w + b.w + 0.4 || Math.abs(a.y - b.y) * 2 >= a.h + b.h + 0.4);

/** Rows of small parts in what is left of the board, as real boards have them. */
function sprinkle(board, random) {
  const wanted = Math.round((board.width * board.height) / 210);
  for (let tries = 0, done = 0; tries < wanted * 6 && done < wanted; tries++) {
    const at = [EDGE_MM + random() * (board.width - 2 * EDGE_MM), EDGE_MM + random() * (board.height - 2 * EDGE_MM)];
    const kind = random() < 0.5 ? 'resistor' : 'capacitor';
    const count = 1 + Math.floor(random() * 3);
    for (let i = 0; i < count; i++) if (place(board, { kind, block: '' }, [at[0], at[1] + i * 2.3], 3)) done += 1;
  }
}

function number(board, random) {
  const next = {};
  const taken = new Set(board.parts.map((part) => part.label));
  for (const part of board.parts) {
    const prefix = PREFIX[part.kind];
    if (!part.label) {
      do next[prefix] = (next[prefix] ?? 0) + 1;
      while (taken.has(`${prefix}${next[prefix]}`));
      part.label = `${prefix}${next[prefix]}`;
    }
    part.legend = legendOf(part.kind, random);
  }
}
