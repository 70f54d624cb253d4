import { PACKAGES } from './packages.mjs';

/** Roughness and metalness by finish. */
export const FINISHES = {
  plastic: [0.55, 0],
  gloss: [0.25, 0],
  ceramic: [0.42, 0],
  solder: [0.24, 1],
  tin: [0.34, 1],
  gold: [0.3, 1],
  crust: [0.95, 0],
};

const TIN = '#c9ccce';
const SOLDER = '#d3d6d8';
const DARK = '#1d1d1f';

/** A block whose top is `top` times as large and moved by `lean` (mm): z is its foot. */
const prism = (x, y, z, [w, d, h], colour, finish, top = [1, 1], lean = [0, 0]) => ({
  form: 'prism',
  at: [x, y, z],
  size: [w, d, h],
  top,
  lean,
  colour,
  finish,
});
const round = (x, y, z, [w, d, h], colour, finish) => ({ form: 'round', at: [x, y, z], size: [w, d, h], colour, finish });
/** The upper half of an egg. */
export const dome = (x, y, z, [w, d, h], colour, finish) => ({ form: 'dome', at: [x, y, z], size: [w, d, h], colour, finish });

/** Pads as thin metal, in the part's own frame: they stay where the part goes away. */
export function padSolids({ kind }) {
  const { pads, form } = PACKAGES[kind];
  const colour = form === 'printed' ? '#c9a14a' : TIN;
  const finish = form === 'printed' ? 'gold' : 'tin';
  return pads.map((pad) => (pad.round ? round : prism)(pad.x, pad.y, 0, [pad.w, pad.h, 0.04], colour, finish));
}

/** What is left on pads whose part is gone: a little solder. */
export const bareSolder = ({ kind }, random) =>
  PACKAGES[kind].pads.map((pad) =>
    dome(pad.x, pad.y, 0.03, [pad.w * (0.7 + 0.2 * random()), pad.h * 0.85, 0.08 + 0.12 * random()], SOLDER, 'solder'),
  );

/** The solder at each pad of a part: its amount differs from board to board. */
export function fillets({ kind }, random) {
  const { pads, form, body } = PACKAGES[kind];
  if (form === 'printed' || form === 'spring') return [];
  const tall = form === 'passive' ? body[2] * 0.7 : form === 'wires' ? 0.9 : 0.32;
  return pads.map((pad) => {
    const amount = 0.75 + 0.5 * random();
    return dome(pad.x, pad.y, 0.02, [pad.w * 0.96, pad.h * 0.94, tall * amount], SOLDER, 'solder');
  });
}

/** Body and legs of a part in its own frame, mm; `shade` 0..1 is the part-maker's. */
export function bodySolids(part, shade) {
  const { pads, body, form } = PACKAGES[part.kind];
  return FORMS[form](body, pads, part, shade);
}

const mixed = (a, b, t) => {
  const at = (hex, i) => parseInt(hex.slice(1 + 2 * i, 3 + 2 * i), 16);
  return `#${[0, 1, 2]
    .map((i) =>
      Math.round(at(a, i) + (at(b, i) - at(a, i)) * t)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
};

const FORMS = {
  printed: () => [],
  passive([l, w, h], _, { ref }, shade) {
    const isResistor = ref.startsWith('R') || ref.startsWith('F');
    const colour = isResistor ? mixed('#1a1a1c', '#26303a', shade) : mixed('#a98d6a', '#c6ab88', shade);
    const ends = [-1, 1].map((side) => prism(side * l * 0.4, 0, 0.03, [l * 0.2, w, h], SOLDER, 'tin', [0.96, 0.94]));
    return [prism(0, 0, 0.03, [l * 0.62, w * 0.98, h * 0.97], colour, isResistor ? 'gloss' : 'ceramic', [1, 0.94]), ...ends];
  },
  chip: ([l, w, h], pads, _, shade) => [
    prism(0, 0, 0.12, [l, w, h * 0.5], DARK, 'plastic', [1, 1]),
    prism(0, 0, 0.12 + h * 0.5, [l, w, h * 0.5], mixed(DARK, '#2e2e31', shade), 'plastic', [0.95, 0.93]),
    ...pads.flatMap((pad) => gullWing(pad, l, w, h)),
  ],
  diode: ([l, w, h], pads, _, shade) => [
    prism(0, 0, 0.1, [l, w, h], mixed('#161618', '#2a2a2c', shade), 'plastic', [0.92, 0.9]),
    prism(-l * 0.3, 0, h + 0.09, [l * 0.14, w * 0.88, 0.015], '#c8c8c4', 'plastic'),
    ...pads.map((pad) => prism(pad.x * 0.9, pad.y, 0.05, [pad.w, pad.h * 0.7, 0.2], TIN, 'tin')),
  ],
  can: ([d, , h], pads, { value }, shade) => [
    prism(0, 0, 0.05, [d, d, 0.9], '#18181a', 'plastic'),
    round(0, 0, 0.9, [d * 0.94, d * 0.94, h - 0.9], mixed('#b9bcc0', '#d2d4d6', shade), 'tin'),
    { ...prism(-d * 0.3, 0, h, [d * 0.26, d * 0.62, 0.02], '#26262a', 'plastic'), legend: value },
    ...pads.map((pad) => prism(pad.x, pad.y, 0.04, [pad.w, pad.h * 0.6, 0.2], TIN, 'tin')),
  ],
  coil: ([l, w, h], _, __, shade) => [
    prism(0, 0, 0.05, [l, w, h * 0.25], '#3a3836', 'ceramic'),
    round(0, 0, h * 0.25, [l * 0.86, w * 0.86, h * 0.55], mixed('#8a4a22', '#a0602c', shade), 'gloss'),
    round(0, 0, h * 0.8, [l, w, h * 0.2], '#4a4744', 'ceramic'),
  ],
  socket: ([l, w, h], pads, { kind }, shade) => [
    prism(
      0,
      0,
      0.05,
      [l, w, h],
      kind.startsWith('FLAT') || kind === 'SOCKET-3' ? mixed('#c9c3ae', '#dcd6c2', shade) : mixed('#1c1c1e', '#2c2c30', shade),
      'plastic',
      [0.98, 0.96],
    ),
    prism(0, 0, h + 0.05, [l * 0.82, w * 0.42, 0.03], '#0c0c0d', 'plastic'),
    ...pads.map((pad) => prism(pad.x * 0.95, pad.y * 0.9, 0.04, [pad.w * 0.6, pad.h, 0.25], TIN, 'tin')),
  ],
  metalSocket: ([l, w, h], pads, _, shade) => [
    prism(0, 0, 0.05, [l, w, h], mixed('#aeb1b4', '#c6c8ca', shade), 'tin', [0.97, 0.96]),
    prism(0, 0, h + 0.05, [l * 0.4, w * 0.36, 0.5], '#161617', 'plastic'),
    ...pads.map((pad) => prism(pad.x, pad.y, 0.04, [pad.w * 0.7, pad.h * 0.8, 0.3], TIN, 'tin')),
  ],
  wheel: ([d, , h]) => [
    round(0, 0, 0.4, [d, d, h - 0.4], '#26262a', 'plastic'),
    round(0, 0, h, [d * 0.34, d * 0.34, 0.35], '#b6b8ba', 'tin'),
    prism(d * 0.25, 0, h, [d * 0.2, d * 0.06, 0.05], '#dcdcd8', 'plastic'),
  ],
  trimmer: ([l, w, h]) => [
    prism(0, 0, 0.05, [l, w, h * 0.7], '#d8d4c8', 'ceramic'),
    round(0, 0, h * 0.7, [w * 0.75, w * 0.75, h * 0.3], '#c8b46a', 'gold'),
    prism(0, 0, h + 0.01, [w * 0.6, w * 0.14, 0.02], '#4a4228', 'plastic'),
  ],
  wires: (_, pads) =>
    pads.flatMap((pad, i) => [
      prism(pad.x, pad.y - 1.2, 0.3, [0.9, 3, 0.9], ['#b02a24', '#1c1c1e', '#d8c22c'][i % 3], 'gloss', [0.7, 1]),
      dome(pad.x, pad.y + 0.2, 0.05, [0.7, 1.1, 1], SOLDER, 'solder'),
    ]),
  spring: ([l, w, h]) =>
    [0.1, 0.4, 0.7].map((z, i) => round(0, 0, h * z + 0.1, [l * (1 - 0.22 * i), w * (1 - 0.22 * i), 0.5], '#c3c6c8', 'tin')),
};

/** A leg from the body's side down to its pad. */
function gullWing(pad, l, w, h) {
  const isSide = Math.abs(pad.x) > l / 2;
  const sign = Math.sign(isSide ? pad.x : pad.y);
  const edge = (isSide ? l : w) / 2;
  const reach = Math.abs(isSide ? pad.x : pad.y) - edge;
  const wide = Math.min(pad.w, pad.h) * 0.72;
  const along = (from, long, z, high, lean) => {
    const middle = sign * (edge + from);
    return isSide
      ? prism(middle, pad.y, z, [long, wide, high], TIN, 'tin', [1, 1], [-sign * lean, 0])
      : prism(pad.x, middle, z, [wide, long, high], TIN, 'tin', [1, 1], [0, -sign * lean]);
  };
  const knee = h * 0.5;
  return [
    along(reach * 0.25, reach * 0.5, knee, 0.14, 0),
    along(reach * 0.55, 0.18, 0.12, knee, reach * 0.1),
    along(reach * 0.95, reach * 0.8, 0.06, 0.14, 0),
  ];
}

/** Height of a part above the board, mm. */
export const heightOf = ({ kind }) => Math.max(0.05, PACKAGES[kind].body[2] + 0.1);
