/** Pads in a row along x: `n` pads `pitch` apart at `y` from the middle. */
const row = (n, pitch, y, w, h) => Array.from({ length: n }, (_, i) => ({ x: (i - (n - 1) / 2) * pitch, y, w, h }));
const column = (n, pitch, x, w, h) => Array.from({ length: n }, (_, i) => ({ x, y: (i - (n - 1) / 2) * pitch, w, h }));
const pair = (span, w, h) => [-1, 1].map((side) => ({ x: (side * span) / 2, y: 0, w, h }));
const twoRows = (n, pitch, span, w, h) => [...row(n, pitch, span / 2, w, h), ...row(n, pitch, -span / 2, w, h)];
const fourSides = (n, pitch, span, w, h) => [
  ...twoRows(n, pitch, span, w, h),
  ...column(n, pitch, span / 2, h, w),
  ...column(n, pitch, -span / 2, h, w),
];
const three = (pitch, span) => [...row(2, pitch, span / 2, 0.7, 0.9), { x: 0, y: -span / 2, w: 0.7, h: 0.9 }];

/**
 * What stands on a board, by package: pads in mm from the middle, the body (length, width, height in mm) and its form. Sizes are those of common parts, from memory;
 * connectors are invented.
 */
export const PACKAGES = {
  '0603': { pads: pair(1.5, 0.8, 0.9), body: [1.6, 0.8, 0.5], form: 'passive' },
  '0805': { pads: pair(1.9, 1, 1.3), body: [2, 1.25, 0.8], form: 'passive' },
  1206: { pads: pair(3, 1.1, 1.7), body: [3.2, 1.6, 1.1], form: 'passive' },
  'CAN-6': { pads: pair(4.4, 2, 1.2), body: [5.2, 5.2, 5.6], form: 'can' },
  'SOD-123': { pads: pair(3.4, 0.9, 0.9), body: [2.7, 1.6, 1.1], form: 'diode' },
  'SOD-323': { pads: pair(2.3, 0.7, 0.7), body: [1.7, 1.25, 0.9], form: 'diode' },
  'SOT-23': { pads: three(1.9, 2.1), body: [2.9, 1.3, 1], form: 'chip' },
  'SOT-23-5': { pads: [...row(3, 0.95, 1.2, 0.55, 0.9), ...row(2, 1.9, -1.2, 0.55, 0.9)], body: [2.9, 1.5, 1.1], form: 'chip' },
  'SOT-23-6': { pads: twoRows(3, 0.95, 2.4, 0.55, 0.9), body: [2.9, 1.5, 1.1], form: 'chip' },
  'SOIC-8': { pads: twoRows(4, 1.27, 5.2, 0.6, 1.5), body: [4.9, 3.9, 1.5], form: 'chip' },
  'SOIC-14': { pads: twoRows(7, 1.27, 5.2, 0.6, 1.5), body: [8.6, 3.9, 1.5], form: 'chip' },
  'QFP-32': { pads: fourSides(8, 0.8, 8.4, 0.45, 1.4), body: [6.8, 6.8, 1.4], form: 'chip' },
  'COIL-5': { pads: pair(4.2, 1.3, 2), body: [5, 5, 3], form: 'coil' },
  'COIL-4': { pads: pair(3.4, 1.1, 1.7), body: [4, 4, 2.4], form: 'coil' },
  'JACK-3': { pads: [...column(2, 3, -2.6, 1.2, 1.2), ...column(2, 3, 2.6, 1.2, 1.2)], body: [5.4, 6, 4.4], form: 'socket' },
  'PORT-3': { pads: [...row(3, 1.2, 2.2, 0.5, 1.2), ...pair(7, 1.2, 1.6)], body: [6.6, 3.8, 2.6], form: 'metalSocket' },
  'SOCKET-3': { pads: [...row(3, 1.5, 2, 0.6, 1.2), ...pair(6, 1.1, 1.4)], body: [5.2, 3.2, 4.8], form: 'socket' },
  'SLOT-12': { pads: [...row(12, 1.5, -2, 0.7, 1.2), ...pair(21, 1.6, 2)], body: [19.6, 3.4, 6.5], form: 'socket' },
  'FLAT-6': { pads: [...row(6, 1, -1.7, 0.45, 1.1), ...pair(7.2, 1.1, 1.4)], body: [6.6, 2.6, 1.9], form: 'socket' },
  'FLAT-2': { pads: [...row(2, 1, -1.6, 0.45, 1.1), ...pair(3.8, 0.9, 1.2)], body: [3, 2.4, 1.7], form: 'socket' },
  'WIRES-2': { pads: row(2, 2.4, 0, 1.6, 1.6), body: [4, 1.6, 1], form: 'wires' },
  'WIRES-3': { pads: row(3, 2.2, 0, 1.5, 1.5), body: [6, 1.6, 1], form: 'wires' },
  'SWITCH-3': { pads: [...column(3, 2, 1.8, 1.2, 0.8), ...column(2, 7.2, 0, 1.4, 1)], body: [2.6, 6.4, 2.6], form: 'metalSocket' },
  'WHEEL-3': { pads: row(3, 2, 2.4, 0.9, 1.1), body: [7, 7, 2.4], form: 'wheel' },
  'WHEEL-6': { pads: [...row(3, 2, 2.8, 0.9, 1.1), ...row(3, 2, -2.8, 0.9, 1.1)], body: [7.6, 7.6, 3], form: 'wheel' },
  'TRIMMER-3': { pads: [...row(2, 2.2, 1.7, 0.9, 1), { x: 0, y: -1.7, w: 1.2, h: 1 }], body: [3.6, 3.4, 1.8], form: 'trimmer' },
  'LEAF-2': { pads: pair(4.4, 1.2, 1.6), body: [4, 1.8, 3], form: 'metalSocket' },
  'SPRING-1': { pads: [{ x: 0, y: 0, w: 4, h: 4 }], body: [3, 3, 4.5], form: 'spring' },
  'KEY-2': { pads: pair(2, 1.7, 3.2), body: [0, 0, 0], form: 'printed' },
  TP: { pads: [{ x: 0, y: 0, w: 1.2, h: 1.2, round: true }], body: [0, 0, 0], form: 'printed' },
};

/** Room that a package takes, mm: body or pads, whichever reach farther. */
export function courtOf(name) {
  const { pads, body } = PACKAGES[name];
  const reach = (axis, size) => Math.max(...pads.map((pad) => Math.abs(pad[axis]) + pad[size] / 2));
  return [2 * Math.max(body[0] / 2, reach('x', 'w')), 2 * Math.max(body[1] / 2, reach('y', 'h'))];
}

/** A point of a part's own frame on the board; `turn` is in degrees, clockwise as seen, as y runs down. */
export function onBoard(part, x, y) {
  const turn = (part.turn * Math.PI) / 180;
  return [part.x + x * Math.cos(turn) - y * Math.sin(turn), part.y + x * Math.sin(turn) + y * Math.cos(turn)];
}
