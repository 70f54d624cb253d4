import { LIMITS, type FitAnswer, type PadFit } from './answer.ts';
import type { Hole } from './holes.ts';
import type { Land } from './lands.ts';
import type { Pattern } from './pattern.ts';
import { boxOf, type Piece } from './polygon.ts';
import { seated, worked } from './seat.ts';

/** Looks of the picture, as attributes, so that it needs no style sheet; a page may overrule them by the classes. */
const LOOKS = {
  place: 'class="place" fill="#c98a3a" fill-opacity=".55"',
  hole: 'class="hole" fill="#fff" stroke="#6b4a1e" stroke-width=".04"',
  part: 'class="part" fill="#1b6e8c" fill-opacity=".35" stroke="#0d4f66" stroke-width=".05"',
  off: 'class="off" fill="#b3261e" fill-opacity=".4" stroke="#8c1d18" stroke-width=".08"',
  leg: 'class="leg" fill="none" stroke="#0d4f66" stroke-width=".06" stroke-dasharray=".15 .1"',
  name: 'fill="#111" font-family="sans-serif" text-anchor="middle" dominant-baseline="central"',
} as const;
const MARGIN_MM = 1;
const LARGEST_TEXT_MM = 0.9;

const mm = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);
const plain = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
const path = (cover: readonly Piece[]): string =>
  cover.map((piece) => `M${piece.map(([x, y]) => `${mm(x)} ${mm(-y)}`).join('L')}Z`).join('');

/**
 * A picture of a part over the pads of its place, as the text of an SVG with a true scale in mm: pads of the place, the part as laid by the fit, what does not lie well
 * marked, holes, and the names of pins. `label` is read out in place of the picture.
 */
export function drawFit(part: Pattern, place: Pattern, fit: FitAnswer, label: string): string {
  const [over, under] = [seated(worked(part), fit.placing), worked(place)];
  const box = boxOf([...[...over.lands, ...under.lands].flatMap(({ cover }) => cover), ...[...over.holes, ...under.holes].map(cornersOf)]);
  if (!Number.isFinite(box.x1)) return '';
  const [x, y, w, h] = [box.x1 - MARGIN_MM, -box.y2 - MARGIN_MM, box.x2 - box.x1 + 2 * MARGIN_MM, box.y2 - box.y1 + 2 * MARGIN_MM];
  const parts = [
    ...under.lands.map(({ cover }) => `<path ${LOOKS.place} d="${path(cover)}"/>`),
    ...under.holes.map((hole) => slot(hole, 'hole')),
    ...over.lands.map((land, i) => landShape(land, fit.pads[i])),
    ...over.holes.map((hole) => slot(hole, 'leg')),
    ...over.lands.map(nameOf),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${[x, y, w, h].map(mm).join(' ')}" width="${mm(w)}mm" height="${mm(h)}mm" role="img" ` +
    `aria-label="${plain(label)}"><rect x="${mm(x)}" y="${mm(y)}" width="${mm(w)}" height="${mm(h)}" fill="#fbfaf5"/>${parts.join('')}</svg>`
  );
}

const landShape = ({ cover, names }: Land, pad: PadFit | undefined): string =>
  `<path ${LOOKS[pad && pad.overlap >= LIMITS.overlap ? 'part' : 'off']} d="${path(cover)}"><title>${plain(names.join(', '))}</title></path>`;

const cornersOf = ({ at: [x, y], wMm, hMm }: Hole): Piece => [
  [x - wMm / 2, y - hMm / 2],
  [x + wMm / 2, y + hMm / 2],
];

const slot = ({ at, wMm, hMm }: Hole, look: 'hole' | 'leg'): string =>
  `<rect ${LOOKS[look]} x="${mm(at[0] - wMm / 2)}" y="${mm(-at[1] - hMm / 2)}" width="${mm(wMm)}" height="${mm(hMm)}" rx="${mm(Math.min(wMm, hMm) / 2)}"/>`;

function nameOf({ at, box, names }: Land): string {
  const text = names.join('/');
  const size = Math.min(LARGEST_TEXT_MM, (box.x2 - box.x1) / (0.6 * text.length), box.y2 - box.y1);
  return `<text ${LOOKS.name} x="${mm(at[0])}" y="${mm(-at[1])}" font-size="${mm(size)}">${plain(text)}</text>`;
}
