import { KINDS } from './part-kinds.mjs';
import { padsOf } from './pads-of.mjs';

const CELL_MM = 0.4;
const EDGE_CELLS = 3;
const STEPS = [
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
  [0, -1],
  [1, -1],
];

/**
 * Tracks between the pads of a placed board, found on a grid by a search that likes straight lines (Lee 1961, with the
 * estimate of Hart, Nilsson and Raphael 1968), and vias where a track goes to the other side. What finds no way stays a via.
 */
export function routeTracks(board, random) {
  const grid = new Grid(board);
  const tracks = [];
  const vias = [];
  for (const [from, to] of netsOf(board, random)) {
    const path = grid.route(from, to);
    if (path) tracks.push({ points: path, width: from.wide && to.wide ? 0.7 : 0.28 });
    else for (const pad of [from, to]) stub(grid, pad, tracks, vias, random);
  }
  for (let i = 0; i < (board.width * board.height) / 45; i++) {
    const at = { x: 2 + random() * (board.width - 4), y: 2 + random() * (board.height - 4) };
    if (grid.takeVia(at)) vias.push(at);
  }
  return { tracks, vias };
}

/** A short way from a pad to a via near it. */
function stub(grid, pad, tracks, vias, random) {
  for (let tries = 0; tries < 10; tries++) {
    const angle = (Math.floor(random() * 8) * Math.PI) / 4;
    const reach = 1.6 + random() * 2.4;
    const at = { x: pad.x + reach * Math.cos(angle), y: pad.y + reach * Math.sin(angle) };
    if (!grid.isOpen(at)) continue;
    const path = grid.route(pad, { ...at, net: pad.net }, 600);
    if (!path) continue;
    tracks.push({ points: path, width: 0.28 });
    vias.push(path.at(-1));
    return;
  }
}

/** Which pads belong together: rows of buses between the large chips, each leg to a near small part, the rest to vias. */
function netsOf(board, random) {
  const pads = [];
  board.parts.forEach((part, index) => {
    const wide = ['spring', 'slideSwitch', 'jack', 'diode', 'inductor', 'can'].includes(part.kind);
    const own = padsOf(part);
    for (const pad of own) pads.push({ ...pad, part: index, legs: own.length, wide, net: pads.length + 1 });
  });
  board.pads = pads;
  const taken = new Set();
  const nets = [];
  const join = (a, b) => {
    taken.add(a.net).add(b.net);
    nets.push([a, b]);
  };
  const big = pads.filter((pad) => pad.legs >= 18);
  for (const pad of big.filter(() => random() < 0.62)) {
    const mate = nearest(pad, big, (other) => other.part !== pad.part && !taken.has(other.net) && gap(pad, other) < 60);
    if (mate && !taken.has(pad.net)) join(pad, mate);
  }
  for (const pad of pads) {
    if (taken.has(pad.net) || random() < 0.2) continue;
    const mate = nearest(pad, pads, (other) => other.part !== pad.part && !taken.has(other.net) && gap(pad, other) < 22);
    if (mate) join(pad, mate);
  }
  return nets.sort((a, b) => gap(...a) - gap(...b));
}

const gap = (a, b) => Math.hypot(a.x - b.x, a.y - b.y);
function nearest(pad, pads, allowed) {
  let best;
  for (const other of pads) if (allowed(other) && (!best || gap(pad, other) < gap(pad, best))) best = other;
  return best;
}

class Grid {
  constructor(board) {
    this.cols = Math.floor(board.width / CELL_MM);
    this.rows = Math.floor(board.height / CELL_MM);
    /** 0 free, −1 for everybody closed, n for net n only. */
    this.owner = new Int32Array(this.cols * this.rows);
    for (let i = 0; i < this.owner.length; i++) if (this.#nearEdge(i)) this.owner[i] = -1;
    for (const hole of board.holes) this.#close({ x: hole.x, y: hole.y, w: 5.2, h: 5.2 }, -1);
    for (const part of board.parts.filter((each) => KINDS[each.kind]?.printed)) {
      const [w, h] = KINDS[part.kind].court;
      this.#close({ x: part.x, y: part.y, w: w - 0.6, h: h - 0.6 }, -1);
    }
    let net = 0;
    for (const part of board.parts) for (const pad of padsOf(part)) this.#close({ ...pad, w: pad.w + 0.5, h: pad.h + 0.5 }, (net += 1));
  }

  #nearEdge(i) {
    const [x, y] = [i % this.cols, Math.floor(i / this.cols)];
    return x < EDGE_CELLS || y < EDGE_CELLS || x >= this.cols - EDGE_CELLS || y >= this.rows - EDGE_CELLS;
  }

  #close({ x, y, w, h }, net) {
    for (let row = Math.ceil((y - h / 2) / CELL_MM); row <= (y + h / 2) / CELL_MM; row++)
      for (let col = Math.ceil((x - w / 2) / CELL_MM); col <= (x + w / 2) / CELL_MM; col++)
        if (row >= 0 && col >= 0 && row < this.rows && col < this.cols) this.owner[row * this.cols + col] = net;
  }

  #cellOf({ x, y }) {
    const col = Math.min(this.cols - 1, Math.max(0, Math.round(x / CELL_MM)));
    return Math.min(this.rows - 1, Math.max(0, Math.round(y / CELL_MM))) * this.cols + col;
  }

  isOpen(at) {
    return this.owner[this.#cellOf(at)] === 0;
  }

  takeVia(at) {
    const cell = this.#cellOf(at);
    for (let dy = -2; dy <= 2; dy++) for (let dx = -2; dx <= 2; dx++) if (this.owner[cell + dy * this.cols + dx] !== 0) return false;
    this.owner[cell] = -1;
    return true;
  }

  /** Corners of the way from one pad to another, or null; the way is closed to others. */
  route(from, to, limit = 60_000) {
    const [start, goal] = [this.#cellOf(from), this.#cellOf(to)];
    const [goalX, goalY] = [goal % this.cols, Math.floor(goal / this.cols)];
    const cost = new Map([[start, 0]]);
    const came = new Map();
    const open = new Heap();
    open.push(start, 0);
    for (let steps = 0; steps < limit && open.size > 0; steps++) {
      const cell = open.pop();
      if (cell === goal) return this.#take(cell, came, from, to);
      const before = came.get(cell);
      for (let turn = 0; turn < 8; turn++) {
        const next = cell + STEPS[turn][0] + STEPS[turn][1] * this.cols;
        const owner = this.owner[next];
        if (owner === undefined || (owner !== 0 && owner !== from.net && owner !== to.net)) continue;
        const bend = before && before.turn !== turn ? 0.6 : 0;
        const total = cost.get(cell) + (turn % 2 === 0 ? 1 : Math.SQRT2) + bend;
        if (total >= (cost.get(next) ?? Infinity)) continue;
        cost.set(next, total);
        came.set(next, { cell, turn });
        open.push(next, total + Math.hypot((next % this.cols) - goalX, Math.floor(next / this.cols) - goalY));
      }
    }
    return null;
  }

  #take(goal, came, from, to) {
    const cells = [];
    for (let cell = goal; cell !== undefined; cell = came.get(cell)?.cell) cells.push(cell);
    for (const cell of cells)
      for (const step of [0, 1, -1, this.cols, -this.cols, this.cols + 1, this.cols - 1, -this.cols + 1, -this.cols - 1])
        if (this.owner[cell + step] === 0) this.owner[cell + step] = -1;
    const points = cells.toReversed().map((cell) => ({ x: (cell % this.cols) * CELL_MM, y: Math.floor(cell / this.cols) * CELL_MM }));
    points[0] = { x: from.x, y: from.y };
    points[points.length - 1] = { x: to.x, y: to.y };
    return points.filter((p, i) => i === 0 || i === points.length - 1 || !straight(points[i - 1], p, points[i + 1]));
  }
}

const straight = (a, b, c) => Math.abs((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)) < 1e-6;

/** A binary heap: the least first. */
class Heap {
  #items = [];
  get size() {
    return this.#items.length;
  }
  push(value, rank) {
    const items = this.#items;
    let i = items.push({ value, rank }) - 1;
    for (let up = (i - 1) >> 1; i > 0 && items[up].rank > items[i].rank; i = up, up = (i - 1) >> 1)
      [items[up], items[i]] = [items[i], items[up]];
  }
  pop() {
    const items = this.#items;
    const top = items[0].value;
    const last = items.pop();
    if (items.length > 0) items[0] = last;
    for (let i = 0; ;) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) if (child < items.length && items[child].rank < items[least].rank) least = child;
      if (least === i) return top;
      [items[i], items[least]] = [items[least], items[i]];
      i = least;
    }
  }
}
