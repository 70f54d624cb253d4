import { KINDS } from './part-kinds.mjs';
import { absent, barePad } from './part-shapes.mjs';
import { padsOf } from './pads-of.mjs';
import { box, disc, Relief } from './relief.mjs';
import { textPath, textWidth } from './stroke-font.mjs';
import { drawDamage } from './damage.mjs';

/** Width of the drawing; the photo takes fewer of them, so that slanting edges come out smooth. */
const WIDTH_PX = 1900;
/** Room around the board for wires and cables that lead away. */
const MARGIN_MM = 7;

/** Colours of the mask over copper and over bare laminate, by name. */
const MASKS = {
  green: { copper: '#215f3d', gap: '#0e3323', silk: '#e6e8dc' },
  blue: { copper: '#20487c', gap: '#0f274a', silk: '#e8eaec' },
  ochre: { copper: '#86682a', gap: '#4a3814', silk: '#f0ead6' },
  black: { copper: '#1d1e21', gap: '#121315', silk: '#ecedee' },
  white: { copper: '#d6d7d3', gap: '#bcbdb8', silk: '#22242a' },
};

/** The relief of a placed board, with its parts on it and its damage over it. */
export function boardRelief(layout, { mask, title, damage = [], random }) {
  const relief = new Relief(layout.width, layout.height, WIDTH_PX / (layout.width + 2 * MARGIN_MM), MARGIN_MM);
  const colours = MASKS[mask];
  const missing = new Set(damage.filter((each) => each.kind === 'missing').map((each) => each.part));
  relief.put(box(layout.width / 2, layout.height / 2, layout.width, layout.height, 2.2), { fill: colours.copper, h: 0.05, gloss: 0.5 });
  drawTracks(relief, layout, colours);
  drawHoles(relief, layout);
  for (const part of layout.parts) drawSilk(relief, part, colours.silk);
  drawTitle(relief, layout, title, colours.silk);
  for (const part of layout.parts.filter((each) => KINDS[each.kind].printed)) drawPart(relief, part, random, missing);
  const tall = layout.parts
    .filter((each) => !KINDS[each.kind].printed)
    .sort((a, b) => (a.kind === 'wires' ? 1 : 0) - (b.kind === 'wires' ? 1 : 0));
  for (const part of tall) drawPart(relief, part, random, missing);
  for (const each of damage) drawDamage(relief, layout, each, random);
  return relief;
}

function drawPart(relief, part, random, missing) {
  const spec = { ...KINDS[part.kind], legend: part.legend };
  relief.group(part.x, part.y, part.turn, () => (missing.has(part.label) ? absent : spec.draw)(relief, spec, random));
}

/** Where the pour is cut, the mask looks darker; the track shows as a low ridge in it. */
function drawTracks(relief, layout, colours) {
  const pathOf = (points) => `M${points.map((p) => `${p.x.toFixed(2)} ${p.y.toFixed(2)}`).join('L')}`;
  const closed = new Set();
  for (const part of layout.parts)
    for (const pad of padsOf(part)) {
      closed.add(pad);
      relief.put(box(pad.x, pad.y, pad.w + 0.5, pad.h + 0.5, 0.2), { fill: colours.gap, h: 0.03 });
    }
  for (const { points, width } of layout.tracks) relief.put(pathOf(points), { fill: colours.gap, h: 0.03, width: width + 0.36 });
  for (const via of layout.vias) relief.put(disc(via.x, via.y, 0.62), { fill: colours.gap, h: 0.03 });
  for (const { points, width } of layout.tracks) relief.put(pathOf(points), { fill: colours.copper, h: 0.062, width });
  for (const via of layout.vias) {
    relief.put(disc(via.x, via.y, 0.42), { fill: colours.copper, h: 0.07 });
    relief.put(disc(via.x, via.y, 0.16), { fill: '#10140f', h: 0.01, gloss: 0.2 });
  }
  for (const pad of closed) barePad(relief, pad);
}

function drawHoles(relief, layout) {
  for (const { x, y } of layout.holes) {
    relief.put(disc(x, y, 2.4), { fill: '#b9bcb6', h: 0.07, gloss: 0.7, metal: 1 });
    relief.put(disc(x, y, 1.3), { fill: '#15130f', h: 0, gloss: 0 });
  }
}

function drawSilk(relief, part, silk) {
  const [w, h] = KINDS[part.kind].court;
  const turned = part.turn % 180 === 0 ? [w, h] : [h, w];
  const ink = { fill: silk, width: 0.16, opacity: 0.9 };
  if (!['capacitor', 'resistor', 'testPoint', 'smallKey'].includes(part.kind))
    relief.put(box(part.x, part.y, turned[0] - 0.4, turned[1] - 0.4, part.kind === 'keyContact' ? turned[0] / 2 : 0.3), ink);
  if (part.labelAt)
    relief.put(textPath(part.label, part.labelAt.x, part.labelAt.y, part.labelAt.size), { ...ink, width: part.labelAt.size * 0.15 });
}

function drawTitle(relief, layout, title, silk) {
  const size = 1.9;
  relief.put(textPath(title, layout.title.x - textWidth(title, size) / 2, layout.title.y + size / 2, size), {
    fill: silk,
    width: 0.26,
    opacity: 0.95,
  });
}
