import { blot } from '../demo-photos/relief.mjs';
import { padsOf } from '../demo-photos/pads-of.mjs';
import { courtOf, onBoard, PACKAGES } from './packages.mjs';
import { dome, heightOf } from './solids.mjs';

/** How often each fault is drawn. */
const SHARES = { gone: 0.25, moved: 0.2, bridged: 0.15, splash: 0.08, stained: 0.2, torn: 0.12 };
const KIND_OF = { gone: 'missing', moved: 'moved', bridged: 'added', splash: 'added', stained: 'stain', torn: 'damaged' };
/** Faults keep this far from one another, mm. */
const APART_MM = 3;

/**
 * `count` faults of a board by seed, on parts and off them, each with its truth: the kind as the eyes name it, the part it is on (where it is on one), and the corners
 * of the space it takes, mm. None lies in another.
 */
export function plantFaults(board, count, random) {
  const faults = [];
  for (let tries = 0; faults.length < count && tries < 60 * count; tries++) {
    const kind = drawnKind(random);
    const fault = FAULTS[kind](board, random);
    if (fault && faults.every((other) => apart(fault.corners, other.corners) > APART_MM))
      faults.push({ ...fault, fault: kind, kind: KIND_OF[kind] });
  }
  return faults;
}

function drawnKind(random) {
  let at = random() * Object.values(SHARES).reduce((a, b) => a + b);
  return Object.keys(SHARES).find((kind) => (at -= SHARES[kind]) < 0) ?? 'gone';
}

const boundsOf = (corners) =>
  [0, 1].flatMap((axis) => [Math.min(...corners.map((c) => c[axis])), Math.max(...corners.map((c) => c[axis]))]);

function apart(a, b) {
  const [p, q] = [boundsOf(a), boundsOf(b)];
  return Math.max(p[0] - q[1], q[0] - p[1], p[2] - q[3], q[2] - p[3]);
}

const pick = (list, random) => list[Math.floor(random() * list.length)];
const standing = (board) => board.parts.filter(({ kind }) => PACKAGES[kind].form !== 'printed');
const small = (board) => standing(board).filter(({ kind }) => PACKAGES[kind].body[0] < 5.5);

/** The corners of the room that a part takes, `change` from where it stands. */
export function roomOf(part, change = {}) {
  const [w, h] = courtOf(part.kind);
  const moved = { x: part.x + (change.dx ?? 0), y: part.y + (change.dy ?? 0), turn: part.turn + (change.turn ?? 0) };
  return [-1, 1].flatMap((sx) =>
    [-1, 1].flatMap((sy) => [0, heightOf(part)].map((z) => [...onBoard(moved, (sx * w) / 2, (sy * h) / 2), z])),
  );
}

const around = (x, y, r, high) => [-1, 1].flatMap((sx) => [-1, 1].flatMap((sy) => [0, high].map((z) => [x + sx * r, y + sy * r, z])));

const FAULTS = {
  gone(board, random) {
    const part = pick(small(board), random);
    return part && { ref: part.ref, corners: roomOf(part) };
  },
  moved(board, random) {
    const part = pick(
      small(board).filter(({ kind }) => PACKAGES[kind].body[2] < 3),
      random,
    );
    if (!part) return undefined;
    const side = random() < 0.5 ? -1 : 1;
    const [away, towards] = [0.5 + 0.6 * random(), 2 * Math.PI * random()];
    const change = {
      dx: away * Math.cos(towards),
      dy: away * Math.sin(towards),
      turn: side * (10 + 25 * random()),
      leanDeg: random() < 0.35 ? 20 + 25 * random() : 0,
    };
    return { ref: part.ref, change, corners: [...roomOf(part), ...roomOf(part, change)] };
  },
  bridged(board, random) {
    const part = pick(
      standing(board).filter(({ kind }) => PACKAGES[kind].pads.length >= 4),
      random,
    );
    if (!part) return undefined;
    const pads = padsOf({ ...part, pads: PACKAGES[part.kind].pads });
    const from = pick(pads, random);
    const to = pads
      .filter((pad) => pad !== from)
      .sort((a, b) => Math.hypot(a.x - from.x, a.y - from.y) - Math.hypot(b.x - from.x, b.y - from.y))[0];
    const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
    if (Math.hypot(dx, dy) > 2.2) return undefined;
    const [w, d] = [dx + 0.6 * from.w + 0.2, dy + 0.6 * from.h + 0.2];
    const [x, y] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
    const corners = [-1, 1].flatMap((sx) => [-1, 1].flatMap((sy) => [0, 0.5].map((z) => [x + (sx * w) / 2, y + (sy * d) / 2, z])));
    return { ref: part.ref, solids: [dome(x, y, 0.02, [w, d, 0.45 + 0.25 * random()], '#d3d6d8', 'solder')], corners };
  },
  splash(board, random) {
    const [x, y] = [2 + random() * (board.width - 4), 2 + random() * (board.height - 4)];
    const r = 0.4 + 0.45 * random();
    if (!isBare(board, x, y, r + 0.3)) return undefined;
    return {
      solids: [dome(x, y, 0, [2 * r, 2 * r * (0.7 + 0.3 * random()), r * 0.8], '#d3d6d8', 'solder')],
      corners: around(x, y, r, r * 0.8),
    };
  },
  stained(board, random) {
    const onPart = random() < 0.6 ? pick(standing(board), random) : undefined;
    const [x, y] = onPart ? [onPart.x, onPart.y] : [3 + random() * (board.width - 6), 3 + random() * (board.height - 6)];
    const host = onPart ?? partAround(board, x, y);
    const r = 1.3 + 1.5 * random();
    const isGreen = random() < 0.5;
    const colour = isGreen ? '#5f9f86' : pick(['#6b4a1c', '#8a6a2c', '#d8d2c0'], random);
    const film = { d: blot(x, y, r, 0.3, random), fill: colour, opacity: 0.45 + 0.35 * random() };
    const crust = Array.from({ length: isGreen ? 26 : 9 }, () => {
      const [away, at] = [r * Math.sqrt(random()) * 0.9, 2 * Math.PI * random()];
      const size = 0.15 + 0.3 * random();
      return dome(
        x + away * Math.cos(at),
        y + away * Math.sin(at),
        0,
        [size, size, 0.2 + 0.5 * random()],
        isGreen ? pick(['#7fc4ae', '#cfe4da', '#4d8f7a'], random) : colour,
        'crust',
      );
    });
    return { ...(host && { ref: host.ref }), film, solids: crust, corners: around(x, y, r, 0.3) };
  },
  torn(board, random) {
    const { points } = pick(board.tracks, random) ?? {};
    if (!points || points.length < 2) return undefined;
    const i = Math.floor(random() * (points.length - 1));
    const t = 0.3 + 0.4 * random();
    const [x, y] = ['x', 'y'].map((axis) => points[i][axis] + t * (points[i + 1][axis] - points[i][axis]));
    if (!isBare(board, x, y, 1)) return undefined;
    const along = Math.atan2(points[i + 1].y - points[i].y, points[i + 1].x - points[i].x) + Math.PI / 2 + (random() - 0.5);
    const half = 1 + 1.3 * random();
    const [dx, dy] = [half * Math.cos(along), half * Math.sin(along)];
    const bend = [x + (random() - 0.5) * 0.8, y + (random() - 0.5) * 0.8];
    const d = `M${x - dx} ${y - dy}L${bend[0]} ${bend[1]}L${x + dx} ${y + dy}`;
    const marks = [
      { d, stroke: '#b9743c', width: 0.5 },
      { d, stroke: '#c9bd92', width: 0.26 },
    ];
    const corners = [
      [x - dx, y - dy, 0],
      [x + dx, y + dy, 0],
      [...bend, 0],
    ].flatMap(([u, v]) => around(u, v, 0.25, 0));
    return { marks, corners };
  },
};

const isBare = (board, x, y, room) =>
  board.parts.every((part) => {
    const court = courtOf(part.kind);
    const [w, h] = part.turn % 180 === 0 ? court : [court[1], court[0]];
    return Math.abs(part.x - x) > w / 2 + room || Math.abs(part.y - y) > h / 2 + room;
  });

const partAround = (board, x, y) => standing(board).find((part) => !isBare({ parts: [part] }, x, y, 0));
