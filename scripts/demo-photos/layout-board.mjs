import { KINDS } from './part-kinds.mjs';
import { legendOf, lookOf, PREFIX } from './block-looks.mjs';
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
  for (const hole of board.holes) board.fence.push({ x: hole.x, y: hole.y, w: 7, h: 7 });
  const flip = ([x, y]) => [x, height - y];
  for (const point of file.points.filter((each) => each.at && each.side === 'front'))
    place(board, { kind: 'testPoint', block: point.block, point: point.id, label: point.id }, flip(point.at), random, 6);
  const blocks = file.blocks.filter((block) => block.at && lookOf(block.id).main);
  const bySize = (a, b) => area(lookOf(b.id).main) - area(lookOf(a.id).main);
  for (const block of [...blocks].sort(bySize)) place(board, mainOf(block), flip(block.at), random, 40);
  for (const block of blocks)
    for (const kind of lookOf(block.id).around) place(board, { kind, block: block.id }, flip(block.at), random, 26);
  board.title = titlePlace(board);
  sprinkle(board, random);
  number(board, random);
  return { ...board, ...routeTracks(board, random) };
}

/** A free strip for the name of the board, lowest first. */
function titlePlace(board) {
  const strip = { w: 38, h: 4 };
  for (let y = board.height - 4; y > 4; y -= 1)
    for (let x = board.width - strip.w / 2 - 8; x > strip.w / 2 + 8; x -= 1)
      if (isFree(board.fence, { x, y, ...strip })) {
        board.fence.push({ x, y, ...strip });
        return { x, y };
      }
  return { x: board.width / 2, y: board.height - 3 };
}

const area = (kind) => KINDS[kind].court[0] * KINDS[kind].court[1];

function mainOf(block) {
  const kind = lookOf(block.id).main;
  return { kind, block: block.id, main: true };
}

function holesOf(width, height) {
  const inset = 4.2;
  return [
    { x: inset, y: inset },
    { x: width - inset, y: inset },
    { x: inset, y: height - inset },
    { x: width - inset, y: height - inset },
  ];
}

/** Puts a part at the free place nearest to where it is wanted, within `reach` mm; leaves it out when there is none. */
function place(board, part, [wantX, wantY], random, reach) {
  const spec = KINDS[part.kind];
  const turns = part.main ? turnsToEdge(board, part.kind, wantX, wantY) : [0, 90];
  const step = part.main ? 0.5 : 0.75;
  for (let ring = 0; ring <= reach / step; ring++)
    for (const [dx, dy] of ringPoints(ring, step, random))
      for (const turn of turns) {
        const [w, h] = turn % 180 === 0 ? spec.court : [spec.court[1], spec.court[0]];
        const x = clamp(wantX + dx, w / 2 + EDGE_MM, board.width - w / 2 - EDGE_MM);
        const y = clamp(wantY + dy, h / 2 + EDGE_MM, board.height - h / 2 - EDGE_MM);
        if (Math.hypot(x - wantX, y - wantY) > reach || !isFree(board.fence, { x, y, w, h })) continue;
        board.fence.push({ x, y, w, h });
        board.parts.push({ ...part, x, y, turn });
        return true;
      }
  return false;
}

/** A socket opens towards the nearest edge; other parts lie flat. */
function turnsToEdge(board, kind, x, y) {
  if (!['jack', 'slideSwitch', 'flatSocket', 'smallFlat', 'wires', 'leafSwitch', 'plug', 'wires'].includes(kind)) return [0];
  const away = [
    [y, 0],
    [board.width - x, 90],
    [board.height - y, 180],
    [x, 270],
  ];
  return [away.sort((a, b) => a[0] - b[0])[0][1]];
}

const clamp = (value, low, high) => Math.min(Math.max(value, low), Math.max(low, high));

function ringPoints(ring, step, random) {
  if (ring === 0) return [[0, 0]];
  const count = Math.max(8, ring * 4);
  const start = random();
  return Array.from({ length: count }, (_, i) => {
    const angle = 2 * Math.PI * ((i + start) / count);
    return [Math.round(Math.cos(angle) * ring) * step, Math.round(Math.sin(angle) * ring) * step];
  });
}

const isFree = (fence, a) => fence.every((b) => Math.abs(a.x - b.x) * 2 >= a.w + b.w + 0.5 || Math.abs(a.y - b.y) * 2 >= a.h + b.h + 0.5);

/** Rows of small parts in what is left of the board, as real boards have them. */
function sprinkle(board, random) {
  const wanted = Math.round((board.width * board.height) / 260);
  for (let tries = 0, done = 0; tries < wanted * 6 && done < wanted; tries++) {
    const at = [EDGE_MM + random() * (board.width - 2 * EDGE_MM), EDGE_MM + random() * (board.height - 2 * EDGE_MM)];
    const kind = random() < 0.5 ? 'resistor' : 'capacitor';
    const count = 1 + Math.floor(random() * 3);
    for (let i = 0; i < count; i++) if (place(board, { kind, block: '' }, [at[0], at[1] + i * 2.3], random, 3)) done += 1;
  }
}

function number(board, random) {
  const next = {};
  for (const part of board.parts) {
    const prefix = PREFIX[part.kind];
    next[prefix] = (next[prefix] ?? 0) + 1;
    part.label ??= `${prefix}${next[prefix]}`;
    part.legend = legendOf(part.kind, random);
  }
}
