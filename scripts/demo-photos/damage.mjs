import { blot, box } from './relief.mjs';
import { padsOf } from './pads-of.mjs';

/**
 * Draws one trace of age, liquid or work on a placed board. `kind` says what; `block` or `part` says where, or `at` in
 * mm from the lower left corner; `amount` 0..1 how much. Unknown kinds and places are a mistake in the list of scenes.
 */
export function drawDamage(relief, layout, damage, random) {
  if (damage.kind === 'missing') return;
  const draw = TRACES[damage.kind];
  if (!draw) throw new Error(`There is no trace of the kind "${damage.kind}"; there are: missing, ${Object.keys(TRACES).join(', ')}.`);
  const where = placeOf(layout, damage);
  draw(relief, { layout, random, amount: damage.amount ?? 0.6, ...damage, ...where });
}

function placeOf(layout, damage) {
  if (damage.at) return { x: damage.at[0], y: layout.height - damage.at[1], pads: [], reach: damage.reach ?? 4 };
  const part = layout.parts.find((each) => (damage.part ? each.label === damage.part : each.block === damage.block && each.main));
  if (!part) throw new Error(`Nothing on this board is called "${damage.part ?? damage.block}".`);
  const pads = padsOf(part);
  return { x: part.x, y: part.y, pads, host: part, reach: Math.max(...pads.map((pad) => Math.hypot(pad.x - part.x, pad.y - part.y))) };
}

const around = (x, y, reach, random) => {
  const [angle, far] = [2 * Math.PI * random(), reach * Math.sqrt(random())];
  return [x + far * Math.cos(angle), y + far * Math.sin(angle)];
};
const pickSome = (list, share, random) => list.filter(() => random() < share);

const TRACES = {
  /** Verdigris and white crust that grows from the joints. */
  corrosion(relief, { x, y, pads, reach, amount, random }) {
    const seats = pads.length > 0 ? pickSome(pads, 0.35 + amount / 2, random) : [{ x, y, w: reach, h: reach }];
    relief.put(blot(x, y, reach * 1.15, 0.25, random), { fill: '#3c4a2c', opacity: 0.28 * amount });
    for (const seat of seats)
      for (let i = 0; i < 22 + 60 * amount; i++) {
        const [px, py] = around(seat.x, seat.y, Math.max(seat.w, seat.h) * (0.45 + 0.5 * amount), random);
        const fill = ['#6fae9b', '#4e9a8a', '#a9cdbd', '#dfe6d8', '#7c6a3a', '#3f7f78'][Math.floor(random() * 6)];
        relief.put(blot(px, py, 0.1 + 0.32 * random() * (0.4 + amount), 0.5, random), {
          fill,
          opacity: 0.55 + 0.4 * random(),
          ...(random() < 0.5 ? { h: 0.3 + 0.4 * random(), edge: 0.1 } : {}),
          gloss: 0.05,
        });
      }
  },

  /** A dried puddle: a tide mark with a browner rim. */
  residue(relief, { x, y, reach, amount, random }) {
    const r = reach * (0.9 + amount * 0.7);
    const shape = blot(x, y, r, 0.3, random);
    relief.put(shape, { fill: '#8a6a33', opacity: 0.16 + 0.18 * amount, gloss: 0.75 });
    relief.put(shape, { fill: '#5a3d17', opacity: 0.3 + 0.25 * amount, width: 0.3 });
    for (let i = 0; i < 40 * amount; i++) {
      const [px, py] = around(x, y, r, random);
      relief.put(blot(px, py, 0.12 + 0.3 * random(), 0.5, random), { fill: '#4a3212', opacity: 0.5, gloss: 0.3 });
    }
  },

  /** A dull brown film on contacts. */
  film(relief, { pads, x, y, host, amount, random }) {
    if (host) relief.put(box(x, y, 41, 2, 0.3), { fill: '#3a2c1a', opacity: 0.35 * amount, gloss: 0.05 });
    for (const pad of pickSome(pads, 0.85, random))
      for (let i = 0; i < 6; i++)
        relief.put(blot(...around(pad.x, pad.y, 0.8, random), 0.3 + 0.3 * random(), 0.5, random), {
          fill: '#4d3a22',
          opacity: 0.3 * amount,
          gloss: 0.05,
        });
  },

  /** Solder that runs from one leg to the next. */
  bridged(relief, { pads, random }) {
    const i = Math.floor(pads.length * 0.3);
    const [a, b] = [pads[i], pads[i + 1]];
    const [mx, my] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
    const [w, h] = [Math.abs(a.x - b.x) + Math.min(a.w, 0.7), Math.abs(a.y - b.y) + Math.min(a.h, 0.7)];
    relief.put(box(mx, my, w, h, 0.3), { fill: '#cdd0d0', h: 0.55, edge: 0.2, gloss: 0.95, metal: 1 });
    relief.put(blot(mx, my, Math.max(w, h) * 1.1, 0.3, random), { fill: '#7b5a1f', opacity: 0.3, gloss: 0.8 });
  },

  /** A gouge across the mask that cuts tracks: pale edges, copper, then bare laminate. */
  'track-damaged'(relief, { x, y, reach, random, turn = 35 }) {
    const length = Math.max(5, reach);
    relief.group(x, y, turn, () => {
      const jag = () => (random() - 0.5) * 0.5;
      const d = `M${-length / 2} ${jag()}L${-length / 5} ${jag()}L${length / 6} ${jag()}L${length / 2} ${jag()}`;
      relief.put(d, { fill: '#c9c7a4', h: 0.1, width: 0.95, opacity: 0.85, gloss: 0.1 });
      relief.put(d, { fill: '#b5703a', h: 0.03, width: 0.62, gloss: 0.6, metal: 1 });
      relief.put(d, { fill: '#a79a6c', h: 0, width: 0.34, gloss: 0.05 });
    });
  },

  /** A ring of broken solder about some joints. */
  'dry-joint'(relief, { pads, random }) {
    for (const pad of pickSome(pads, 0.3, random).concat(pads[0])) {
      const r = Math.min(pad.w, pad.h) * 0.5;
      relief.put(blot(pad.x, pad.y, r, 0.15, random), { fill: '#8d8f8c', h: 0.3, edge: 0.1, gloss: 0.15, metal: 0.4 });
      relief.put(blot(pad.x, pad.y, r * 0.72, 0.15, random), { fill: '#2f302d', h: 0.06, width: 0.13, gloss: 0 });
    }
  },

  /** Heat that browned the mask and blistered what stood there. */
  burnt(relief, { x, y, reach, amount, random }) {
    for (let i = 6; i > 0; i--)
      relief.put(blot(x, y, (reach * (0.5 + amount) * i) / 5, 0.2, random), {
        fill: '#1c1208',
        opacity: 0.13 + 0.06 * amount,
        gloss: 0.15,
      });
    relief.put(blot(x, y, reach * 0.3, 0.4, random), { fill: '#0c0806', h: 1.1, edge: 0.6, opacity: 0.9, gloss: 0.05 });
  },

  /** Old flux around joints: amber, shiny. */
  flux(relief, { x, y, pads, reach, amount, random }) {
    for (const seat of pads.length > 0 ? pickSome(pads, 0.6, random) : [{ x, y, w: reach, h: reach }])
      relief.put(blot(seat.x, seat.y, 0.7 + amount * random() * 1.4, 0.35, random), { fill: '#a87b2c', opacity: 0.3, gloss: 0.95 });
  },

  /** A thin wire from one place to another, lacquered red-brown, tinned at its ends. `to` in mm from the lower left. */
  wire(relief, { layout, x, y, to, random }) {
    const [tx, ty] = [to[0], layout.height - to[1]];
    const sag = 3 + 3 * random();
    const d = `M${x} ${y}C${x + sag} ${y + sag * 0.4} ${tx - sag * 0.4} ${ty - sag} ${tx} ${ty}`;
    relief.put(d, { fill: '#8f3f1f', h: 0.5, gloss: 0.7, width: 0.42 });
    relief.put(d, { fill: '#b05a30', h: 0.62, gloss: 0.8, width: 0.2 });
    for (const [px, py] of [
      [x, y],
      [tx, ty],
    ])
      relief.put(blot(px, py, 0.75, 0.15, random), { fill: '#cfd2d2', h: 0.7, edge: 0.1, gloss: 0.95, metal: 1 });
  },

  /** Lint and dust, over everything. */
  dust(relief, { layout, amount, random }) {
    for (let i = 0; i < 900 * amount; i++) {
      const [px, py] = [random() * layout.width, random() * layout.height];
      const fill = random() < 0.8 ? '#cfc8b8' : '#6b6252';
      relief.put(blot(px, py, 0.05 + 0.1 * random() ** 3 * 3, 0.5, random), { fill, opacity: 0.25 + 0.4 * random(), gloss: 0.02 });
    }
    for (let i = 0; i < 26 * amount; i++) {
      const [px, py] = [random() * layout.width, random() * layout.height];
      const bend = () => ((random() - 0.5) * 5).toFixed(2);
      relief.put(`M${px} ${py}c${bend()} ${bend()} ${bend()} ${bend()} ${bend()} ${bend()}`, {
        fill: '#bdb5a4',
        opacity: 0.5,
        width: 0.07,
      });
    }
  },
};
