import { blot, box, disc } from './relief.mjs';
import { textPath, textWidth } from './stroke-font.mjs';

/** Looks of the parts. Each draws itself about the origin, y downwards, in mm; heights are common package heights, from memory. */

const TIN = '#c3c7c8';
const GOLD = '#d8b25c';

/** A joint of a part on its pad: the fillet is a dome of solder. */
export function solder(relief, pad, lift = 0.28) {
  const round = Math.min(pad.w, pad.h) * 0.42;
  relief.put(box(pad.x, pad.y, pad.w, pad.h, round), { fill: TIN, h: lift, edge: 0.07, gloss: 0.9, metal: 1 });
}

/** An empty pad: levelled tin, or gold for a contact. */
export function barePad(relief, pad) {
  const gold = pad.gold === true;
  const d = pad.round ? disc(pad.x, pad.y, pad.w / 2) : box(pad.x, pad.y, pad.w, pad.h, 0.08);
  relief.put(d, { fill: gold ? GOLD : '#b9bdbc', h: 0.07, gloss: gold ? 0.7 : 0.6, metal: 1 });
}

const mark = (relief, text, size, colour, y = 0) =>
  relief.put(textPath(text, -textWidth(text, size) / 2 + size * 0.13, y + size / 2, size), { fill: colour, width: size * 0.12 });

/** A moulded chip with gull-wing legs on the sides that have pads. */
export function chip(relief, part, random) {
  const { body, height = 1.6, legend = [] } = part;
  for (const pad of part.pads) {
    solder(relief, pad, 0.2);
    const across = pad.w > pad.h;
    const toward = across ? -Math.sign(pad.x) : -Math.sign(pad.y);
    const [lx, ly] = across ? [pad.x + toward * pad.w * 0.35, pad.y] : [pad.x, pad.y + toward * pad.h * 0.35];
    const [lw, lh] = across ? [pad.w * 0.9, pad.h * 0.62] : [pad.w * 0.62, pad.h * 0.9];
    relief.put(box(lx, ly, lw, lh, 0.06), { fill: '#cfd2d1', h: 0.42, edge: 0.3, gloss: 0.75, metal: 1 });
  }
  const shade = 30 + Math.round(8 * random());
  relief.put(box(0, 0, body.w, body.h, 0.25), { fill: `rgb(${shade},${shade},${shade + 2})`, h: height * 0.72, gloss: 0.12 });
  relief.put(box(0, 0, body.w - 0.34, body.h - 0.34, 0.18), {
    fill: `rgb(${shade + 5},${shade + 5},${shade + 6})`,
    h: height,
    gloss: 0.18,
  });
  const dot = Math.min(0.55, body.h * 0.09);
  relief.put(disc(-body.w / 2 + 3 * dot, body.h / 2 - 3 * dot, dot), { fill: '#1b1b1c', h: height - 0.08, gloss: 0.35 });
  const size = Math.min(1.5, (body.w * 0.72) / Math.max(...legend.map((line) => textWidth(line, 1)), 1), body.h / (legend.length * 1.9));
  legend.forEach((line, i) => mark(relief, line, size, '#a9aaa6', (i - (legend.length - 1) / 2) * size * 1.55));
}

/** A ceramic capacitor or a resistor between two pads. */
export function passive(relief, part, random) {
  for (const pad of part.pads) solder(relief, pad, part.body.h * 0.5);
  const { w, h } = part.body;
  const tall = part.look === 'resistor' ? 0.5 : 0.85;
  relief.put(box(0, 0, w, h, 0.05), { fill: '#cdd0ce', h: tall, gloss: 0.8, metal: 1 });
  const tan = 150 + Math.round(26 * random());
  const fill = part.look === 'resistor' ? '#1e1f22' : `rgb(${tan + 12},${tan - 18},${tan - 52})`;
  relief.put(box(0, 0, w * 0.62, h, 0.02), { fill, h: tall + 0.03, gloss: part.look === 'resistor' ? 0.4 : 0.3 });
  if (part.look === 'resistor') mark(relief, part.legend?.[0] ?? '103', h * 0.5, '#d9d9d4');
}

/** An aluminium can on a black foot, with a dark quarter at its minus side. */
export function can(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.3);
  const r = part.body.w / 2;
  relief.put(box(0, 0, 2 * r + 0.5, 2 * r + 0.5, 0.7), { fill: '#202124', h: 0.9, gloss: 0.25 });
  relief.put(disc(0, 0, r), { fill: '#b4b8ba', h: 5.4, gloss: 0.55, metal: 1 });
  relief.put(disc(0, 0, r * 0.86), { fill: '#c6cacb', h: 5.5, gloss: 0.45, metal: 1 });
  const chord = r * 0.84;
  relief.put(`M${-chord * 0.5} ${-chord * 0.86}A${chord} ${chord} 0 0 0 ${-chord * 0.5} ${chord * 0.86}Z`, { fill: '#33363b', gloss: 0.3 });
  (part.legend ?? []).forEach((line, i) =>
    relief.put(textPath(line, -r * 0.22, (i - 0.4) * 1.35 + 0.5, 0.9), { fill: '#3d4046', width: 0.12 }),
  );
}

/** A shielded inductor: a grey ferrite square with a round lid. */
export function inductor(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.4);
  const { w } = part.body;
  relief.put(box(0, 0, w, w, 0.9), { fill: '#4b4c50', h: 2.7, gloss: 0.15 });
  relief.put(disc(0, 0, w * 0.43), { fill: '#5b5c60', h: 3, edge: 2.8, gloss: 0.2 });
  mark(relief, part.legend?.[0] ?? '220', 1.3, '#d3d3cf');
}

/** A quartz in a pressed tin can. */
export function quartz(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.25);
  const { w, h } = part.body;
  relief.put(box(0, 0, w, h, h / 2), { fill: '#a9abaa', h: 0.9, gloss: 0.6, metal: 1 });
  relief.put(box(0, 0, w - 0.8, h - 0.8, h / 2 - 0.4), { fill: '#c9cbca', h: 3.4, gloss: 0.75, metal: 1 });
  mark(relief, part.legend?.[0] ?? '4.194', 1, '#6b6d6c');
}

/** A diode: black, with a pale band at its cathode. */
export function diode(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.4);
  const { w, h } = part.body;
  relief.put(box(0, 0, w, h, 0.2), { fill: '#26272a', h: 1.9, gloss: 0.25 });
  relief.put(box(w * 0.32, 0, w * 0.14, h, 0), { fill: '#c9c9c2', gloss: 0.2 });
}

/** A row connector: a plastic box whose contacts reach out to their pads. */
export function rowConnector(relief, part) {
  const { w, h } = part.body;
  for (const pad of part.pads) {
    solder(relief, pad, 0.3);
    relief.put(box(pad.x, pad.y - (Math.sign(pad.y) * pad.h) / 2, pad.w * 0.6, pad.h, 0.05), {
      fill: '#d4cfbd',
      h: 0.5,
      gloss: 0.7,
      metal: 1,
    });
  }
  const [plastic, mouth] = part.dark ? ['#2a2b2e', '#151517'] : ['#d9d3c0', '#a59f8d'];
  relief.put(box(0, 0, w, h, 0.3), { fill: plastic, h: part.height ?? 2.2, gloss: 0.22 });
  relief.put(box(0, -h * 0.05, w - 1.4, h * 0.42, 0.15), { fill: mouth, h: (part.height ?? 2.2) * 0.45, gloss: 0.1 });
  for (const pad of part.pads.filter((each) => each.w < 1.4 && each.y > 0))
    relief.put(box(pad.x, -h * 0.05, pad.w * 0.5, h * 0.36), { fill: GOLD, h: (part.height ?? 2.2) * 0.62, gloss: 0.7, metal: 1 });
}

/** A flat-cable socket with its brown latch. */
export function flatSocket(relief, part) {
  const { w, h } = part.body;
  for (const pad of part.pads) solder(relief, pad, 0.25);
  relief.put(box(0, 0, w, h, 0.15), { fill: '#e2ddcd', h: 1.6, gloss: 0.25 });
  relief.put(box(0, -h * 0.28, w + 0.9, h * 0.36, 0.15), { fill: '#4a3528', h: 1.75, gloss: 0.3 });
}

/** A slide switch in a bent tin shell with a black knob. */
export function slideSwitch(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.5);
  const { w, h } = part.body;
  relief.put(box(0, 0, w, h, 0.3), { fill: '#b7baba', h: 3.4, gloss: 0.7, metal: 1 });
  relief.put(box(0, 0, w * 0.55, h * 0.5, 0.1), { fill: '#222326', h: 2.8, gloss: 0.2 });
  relief.put(box(w * 0.13, 0, w * 0.2, h * 0.46, 0.1), { fill: '#38393d', h: 5.6, gloss: 0.3 });
}

/** A round socket for a plug, seen from above: a black block with a tin bush at its mouth. */
export function jack(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.6);
  const { w, h } = part.body;
  relief.put(box(0, 0, w, h, 0.4), { fill: '#232427', h: 5, gloss: 0.25 });
  relief.put(box(0, h * 0.06, w * 0.5, h * 0.7, 0.2), { fill: '#a9abaa', h: 4.6, gloss: 0.7, metal: 1 });
  relief.put(box(0, -h / 2 - 0.8, w * 0.66, 1.8, 0.3), { fill: '#2b2c2f', h: 4.4, gloss: 0.3 });
}

/** A thumb wheel for the volume, its ribbed edge standing out over the side. */
export function wheel(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.5);
  const r = part.body.w / 2;
  relief.put(disc(0, 0, r), { fill: '#3b3c40', h: 2.6, gloss: 0.2 });
  for (let i = 0; i < 48; i++) {
    const angle = (2 * Math.PI * i) / 48;
    relief.put(disc(r * 0.97 * Math.cos(angle), r * 0.97 * Math.sin(angle), r * 0.045), { fill: '#2b2c2f', h: 2.9, gloss: 0.2 });
  }
  relief.put(disc(0, 0, r * 0.8), { fill: '#4a4b50', h: 2.9, gloss: 0.35 });
  relief.put(disc(0, 0, r * 0.2), { fill: '#b9bbba', h: 3.2, edge: 2.9, gloss: 0.8, metal: 1 });
}

/** A pressed spring of a battery bay. */
export function spring(relief, part) {
  for (const pad of part.pads) solder(relief, pad, 0.7);
  const { w, h } = part.body;
  relief.put(box(0, 0, w, h, 0.5), { fill: '#c9cbc8', h: 0.9, gloss: 0.75, metal: 1 });
  relief.put(`M${-w * 0.3} ${h * 0.3}L${-w * 0.3} ${-h * 0.3}L${w * 0.3} ${h * 0.3}L${w * 0.3} ${-h * 0.3}`, {
    fill: '#d8dad7',
    h: 3.2,
    gloss: 0.85,
    metal: 1,
    width: 0.9,
  });
}

/** Two wires soldered to pads and led away. */
export function wires(relief, part, random) {
  part.pads.forEach((pad, i) => {
    solder(relief, pad, 0.9);
    const side = i % 2 === 0 ? -1 : 1;
    const bend = 1 + 1.5 * random();
    const d = `M${pad.x} ${pad.y}c${side * bend} -4 ${-side * bend} -9 ${side * 0.6} -17`;
    const colour = i % 2 === 0 ? '#a8322b' : '#1e1f22';
    relief.put(d, { fill: colour, h: 0.8, gloss: 0.45, width: 1.15 });
    relief.put(d, { fill: i % 2 === 0 ? '#b8403a' : '#2c2d31', h: 1.2, gloss: 0.5, width: 0.7 });
    relief.put(disc(pad.x, pad.y, 0.75), { fill: TIN, h: 1.2, edge: 0.4, gloss: 0.9, metal: 1 });
  });
}

/** A key: two combs of carbon in a ring of silk. */
export function keyContact(relief, part) {
  const r = part.body.w / 2;
  relief.put(disc(0, 0, r), { fill: '#2b2c2e', h: 0.05, gloss: 0.3 });
  for (let i = -4; i <= 4; i++) {
    const reach = Math.sqrt(Math.max(0, (r * 0.92) ** 2 - (i * r * 0.2) ** 2));
    const from = i % 2 === 0 ? -reach : -reach * 0.72;
    const to = i % 2 === 0 ? reach * 0.72 : reach;
    relief.put(`M${from} ${i * r * 0.2}H${to}`, { fill: '#4d4e51', h: 0.09, gloss: 0.45, width: r * 0.1 });
  }
}

/** A round test point of gold with a ring in its middle. */
export function testPoint(relief, part) {
  relief.put(disc(0, 0, part.body.w / 2), { fill: GOLD, h: 0.07, gloss: 0.7, metal: 1 });
}

/** A trimmer: a beige body with a slotted brass screw. */
export function trimmer(relief, part, random) {
  for (const pad of part.pads) solder(relief, pad, 0.4);
  const { w } = part.body;
  relief.put(box(0, 0, w, w, 0.3), { fill: '#e6dfc9', h: 2, gloss: 0.25 });
  relief.put(disc(0, 0, w * 0.36), { fill: '#c9a04c', h: 2.2, edge: 2, gloss: 0.7, metal: 1 });
  const turn = random() * Math.PI;
  const [x, y] = [Math.cos(turn) * w * 0.27, Math.sin(turn) * w * 0.27];
  relief.put(`M${-x} ${-y}L${x} ${y}`, { fill: '#6d5320', h: 1.7, gloss: 0.3, width: w * 0.09 });
}

/** What is left where a part was taken off or fell off: tinned pads, a crust of old flux. */
export function absent(relief, part, random) {
  for (const pad of part.pads) {
    barePad(relief, pad);
    relief.put(blot(pad.x, pad.y, Math.min(pad.w, pad.h) * 0.42, 0.3, random), { fill: TIN, h: 0.16, edge: 0.07, gloss: 0.75, metal: 1 });
  }
  const { w, h } = part.body;
  relief.put(blot(w * 0.1, 0, Math.min(w, h) * 0.4, 0.3, random), { fill: '#6d5a2c', opacity: 0.3, gloss: 0.6 });
}
