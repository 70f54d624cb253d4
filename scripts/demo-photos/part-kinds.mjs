import * as shapes from './part-shapes.mjs';

/** Pads in a row: `n` pads `pitch` apart along x (or y when `vertical`), at `offset` from the middle. */
function row(n, pitch, offset, w, h, vertical = false) {
  return Array.from({ length: n }, (_, i) => {
    const along = (i - (n - 1) / 2) * pitch;
    return vertical ? { x: offset, y: along, w: h, h: w } : { x: along, y: offset, w, h };
  });
}

const twoRows = (n, pitch, span, w = 0.6, h = 1.5) => [...row(n, pitch, span / 2, w, h), ...row(n, pitch, -span / 2, w, h)];
const fourSides = (n, pitch, span) => [
  ...twoRows(n, pitch, span, 0.45, 1.5),
  ...[1, -1].flatMap((s) => row(n, pitch, (s * span) / 2, 0.45, 1.5, true)),
];
const pair = (span, w, h) => [
  { x: -span / 2, y: 0, w, h },
  { x: span / 2, y: 0, w, h },
];

/** Every kind of part: its courtyard (mm), body, pads and how it is drawn. */
export const KINDS = {
  bigChip: {
    court: [10.8, 10.8],
    fence: [
      [10.8, 7.6],
      [7.6, 10.8],
    ],
    body: { w: 7, h: 7 },
    height: 1.5,
    pads: fourSides(8, 0.8, 9.2),
    draw: shapes.chip,
  },
  memoryChip: { court: [11.4, 12.6], body: { w: 9.6, h: 8.4 }, height: 1.2, pads: twoRows(11, 0.8, 10.6, 0.45, 1.6), draw: shapes.chip },
  chip14: { court: [10, 7.6], body: { w: 8.7, h: 3.9 }, height: 1.6, pads: twoRows(7, 1.27, 5.5), draw: shapes.chip },
  chip8: { court: [6.4, 7.6], body: { w: 5, h: 3.9 }, height: 1.6, pads: twoRows(4, 1.27, 5.5), draw: shapes.chip },
  transistor: {
    court: [3.8, 3.6],
    body: { w: 2.9, h: 1.4 },
    height: 1.1,
    pads: [...row(2, 1.9, 1.1, 0.8, 0.9), { x: 0, y: -1.1, w: 0.8, h: 0.9 }],
    draw: shapes.chip,
  },
  capacitor: { court: [3.2, 1.8], body: { w: 1.7, h: 0.9 }, look: 'capacitor', pads: pair(1.7, 0.9, 1), draw: shapes.passive },
  resistor: { court: [3.2, 1.8], body: { w: 1.7, h: 0.9 }, look: 'resistor', pads: pair(1.7, 0.9, 1), draw: shapes.passive },
  bigCapacitor: { court: [4.8, 3], body: { w: 3.2, h: 1.7 }, look: 'capacitor', pads: pair(3.1, 1.2, 1.7), draw: shapes.passive },
  can: { court: [5.6, 5.4], body: { w: 4.3, h: 4.3 }, pads: pair(4.2, 1.6, 1.1), draw: shapes.can },
  inductor: { court: [6.4, 5.8], body: { w: 5, h: 5 }, pads: pair(4.8, 1.3, 1.8), draw: shapes.inductor },
  quartz: { court: [9.8, 4.4], body: { w: 8, h: 3.4 }, pads: pair(7, 2.4, 1.3), draw: shapes.quartz },
  diode: { court: [6, 3.4], body: { w: 4, h: 2.2 }, pads: pair(4.4, 1.6, 1.8), draw: shapes.diode },
  cartridgeSlot: {
    court: [47, 6.2],
    body: { w: 43, h: 4.2 },
    height: 7,
    dark: true,
    pads: [...row(27, 1.5, 2.5, 0.7, 1.1), { x: -22.1, y: 0, w: 2, h: 2.2 }, { x: 22.1, y: 0, w: 2, h: 2.2 }],
    draw: shapes.rowConnector,
  },
  plug: { court: [11, 6.5], body: { w: 9.4, h: 4.6 }, height: 4, pads: row(6, 1.5, 2.7, 0.7, 1.4), draw: shapes.rowConnector },
  flatSocket: {
    court: [21, 6],
    body: { w: 18.6, h: 3.6 },
    pads: [...row(16, 1, 2.3, 0.45, 1.3), { x: -9.7, y: 0, w: 1.4, h: 1.8 }, { x: 9.7, y: 0, w: 1.4, h: 1.8 }],
    draw: shapes.flatSocket,
  },
  smallFlat: {
    court: [10, 6],
    body: { w: 8, h: 3.6 },
    pads: [...row(6, 1, 2.3, 0.45, 1.3), { x: -4.6, y: 0, w: 1.4, h: 1.8 }, { x: 4.6, y: 0, w: 1.4, h: 1.8 }],
    draw: shapes.flatSocket,
  },
  slideSwitch: {
    court: [10, 6],
    body: { w: 8, h: 3.6 },
    pads: [...row(3, 2.2, 2.3, 0.9, 1.2), { x: -4.4, y: 0, w: 1.2, h: 1.6 }, { x: 4.4, y: 0, w: 1.2, h: 1.6 }],
    draw: shapes.slideSwitch,
  },
  jack: {
    overhang: 1.5,
    court: [9, 9.6],
    body: { w: 6, h: 7 },
    pads: [-2, 2].flatMap((y) => pair(7, 1.5, 1.3).map((p) => ({ ...p, y }))),
    draw: shapes.jack,
  },
  smallSocket: {
    court: [6.4, 6.6],
    overhang: 1.5,
    body: { w: 4.6, h: 5 },
    pads: [-1.3, 1.3].flatMap((y) => pair(5, 1, 0.9).map((p) => ({ ...p, y }))),
    draw: shapes.jack,
  },
  wheel: {
    overhang: 3,
    court: [8.6, 8.6],
    body: { w: 8.4, h: 8.4 },
    pads: row(3, 2.2, 3.4, 1, 1.2),
    draw: shapes.wheel,
  },
  spring: { court: [6.8, 5.6], body: { w: 4.8, h: 4.8 }, pads: pair(4.8, 1.6, 2.2), draw: shapes.spring },
  wires: { court: [5.6, 3.6], body: { w: 5, h: 2 }, pads: pair(2.8, 1.6, 1.8), draw: shapes.wires },
  keyContact: { court: [8.4, 8.4], body: { w: 7.4, h: 7.4 }, pads: pair(7, 0.8, 0.8), draw: shapes.keyContact, printed: true },
  smallKey: { court: [6.4, 6.4], body: { w: 5.6, h: 5.6 }, pads: pair(5.4, 0.7, 0.7), draw: shapes.keyContact, printed: true },
  testPoint: {
    court: [2, 2],
    body: { w: 1.5, h: 1.5 },
    pads: [{ x: 0, y: 0, w: 1.5, h: 1.5, round: true, gold: true }],
    draw: shapes.testPoint,
  },
  trimmer: {
    court: [6, 6.4],
    body: { w: 4.6, h: 4.6 },
    pads: [...row(2, 2.4, 2.6, 1, 1.2), { x: 0, y: -2.6, w: 1.4, h: 1.2 }],
    draw: shapes.trimmer,
  },
};
