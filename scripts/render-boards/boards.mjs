import { routeTracks } from '../demo-photos/route-tracks.mjs';
import { courtOf, PACKAGES } from './packages.mjs';

const HOLE_INSET_MM = 3.2;
const MASKS = ['green', 'blue', 'ochre', 'black', 'red'];

/**
 * The upper side of a board as its placement (CSV, mm from the lower left corner, y upwards) has it; `random` draws its tracks only. Out come mm from the upper left
 * corner, y downwards. Parts of the other side and off the board are left out.
 */
export function boardOfPlacement({ name, placement, width, height, mask, random }) {
  const parts = placement
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','))
    .filter(([, , , , side]) => side === 'front')
    .map(([ref, x, y, rotation, , value, kind]) => {
      if (!PACKAGES[kind])
        throw new Error(`There is no package "${kind}", which ${ref} of ${name} has. Add it to the packages of the renderer.`);
      return { ref, x: Number(x), y: height - Number(y), turn: -Number(rotation), value, kind };
    });
  return finished({ name, width, height, mask, parts }, random);
}

/** How many of each package a random board of 50 cm² has at most. */
const STOCK = {
  'SLOT-12': 1, 'QFP-32': 2, 'SOIC-14': 2, 'SOIC-8': 5, 'CAN-6': 5, 'COIL-5': 2, 'COIL-4': 2, 'JACK-3': 2, 'PORT-3': 1, 'SOCKET-3': 1, 'FLAT-6': 2, 'SWITCH-3': 1,
  'WHEEL-3': 1, 'TRIMMER-3': 2, 'KEY-2': 5, 'SOT-23': 6, 'SOT-23-5': 3, 'SOD-123': 5, 'SOD-323': 5, 1206: 8, '0805': 14, '0603': 70, TP: 12,
}; // prettier-ignore
const PREFIX = {
  passive: 'R',
  can: 'C',
  diode: 'D',
  chip: 'U',
  coil: 'L',
  socket: 'J',
  metalSocket: 'J',
  wheel: 'RV',
  trimmer: 'RV',
  printed: 'TP',
};

/** A board that nobody made, by seed: large parts first, each where it is free. */
export function randomBoard(name, random) {
  const [width, height] = [56 + Math.round(28 * random()), 42 + Math.round(18 * random())];
  const taken = holesOf(width, height).map(({ x, y }) => ({ x, y, w: 5.4, h: 5.4 }));
  const parts = [];
  const count = {};
  for (const [kind, most] of Object.entries(STOCK).sort(([a], [b]) => area(b) - area(a))) {
    const wanted = Math.round(most * (0.4 + 0.6 * random()) * Math.min(1, (width * height) / 3600));
    for (let i = 0; i < wanted; i++) {
      const place = freePlace(kind, taken, width, height, random);
      if (!place) break;
      const prefix = kind.startsWith('0') && random() < 0.5 ? 'C' : PREFIX[PACKAGES[kind].form];
      count[prefix] = (count[prefix] ?? 0) + 1;
      parts.push({ ...place, kind, ref: `${prefix}${count[prefix]}`, value: String(Math.floor(100 + 900 * random())) });
    }
  }
  return finished({ name, width, height, mask: MASKS[Math.floor(random() * MASKS.length)], parts }, random);
}

const area = (kind) => courtOf(kind)[0] * courtOf(kind)[1];

function freePlace(kind, taken, width, height, random) {
  const court = courtOf(kind);
  for (let tries = 0; tries < 150; tries++) {
    const turn = 90 * Math.floor(random() * 4);
    const [w, h] = turn % 180 === 0 ? court : [court[1], court[0]];
    const box = {
      x: 1 + w / 2 + Math.round(random() * (width - w - 2) * 2) / 2,
      y: 1 + h / 2 + Math.round(random() * (height - h - 2) * 2) / 2,
      w: w + 0.5,
      h: h + 0.5,
    };
    if (taken.some((other) => Math.abs(other.x - box.x) * 2 < other.w + box.w && Math.abs(other.y - box.y) * 2 < other.h + box.h)) continue;
    taken.push(box);
    return { x: box.x, y: box.y, turn };
  }
  return undefined;
}

const holesOf = (width, height) =>
  [HOLE_INSET_MM, width - HOLE_INSET_MM].flatMap((x) => [HOLE_INSET_MM, height - HOLE_INSET_MM].map((y) => ({ x, y })));

function finished(board, random) {
  const holes = board.parts.some(({ x, y }) => Math.hypot(x - HOLE_INSET_MM, y - HOLE_INSET_MM) < 3)
    ? []
    : holesOf(board.width, board.height);
  const routed = board.parts.map((part) => ({ ...part, pads: PACKAGES[part.kind].pads }));
  return { ...board, holes, ...routeTracks({ ...board, holes, parts: routed }, random) };
}
