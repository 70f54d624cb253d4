import type { Block, MatFastener, MatPanel, MatShape } from './layout-mat.ts';

export type Point = readonly [number, number];

/** Radius of the ring around a place: a small screw's head fits into it. */
const PLACE_R = 3;
const TEXT = 3;
const LINE = 4.5;

const text = (x: number, y: number, words: string, mm = TEXT, anchor: 'start' | 'middle' = 'start'): MatShape => ({
  kind: 'text',
  x,
  y,
  text: words,
  mm,
  anchor,
});

export const title = (heading: string, page: number, pages: number, x: number, y: number): MatShape[] => [
  text(x, y + 4, pages > 1 ? `${heading} (${page} of ${pages})` : heading, 4.5),
  text(x, y + 9.5, 'Print at 100 %, without fitting to the page. Check both rulers: 100 mm each.'),
];

/** A panel with its screws: `lying` turns it a quarter to the left, so that it needs its height across. */
export function panel(face: MatPanel, fasteners: readonly MatFastener[], numberOf: (id: string) => number, lying: boolean): Block {
  const [width, height] = lying ? [face.heightMm, face.widthMm] : [face.widthMm, face.heightMm];
  // From the lower left corner of the face, y up, to the upper left corner of the drawing, y down.
  const at = ([x, y]: Point): Point => (lying ? [face.heightMm - y, face.widthMm - x] : [x, face.heightMm - y]);
  return {
    width,
    height: height + LINE + PLACE_R,
    gap: 5,
    shapesAt: (left, top) => {
      const y0 = top + LINE;
      return [
        text(left, top + TEXT, lying ? `${face.name}, lying on its left side` : face.name),
        { kind: 'rect', x: left, y: y0, width, height },
        ...fasteners.flatMap((each) =>
          each.places.flatMap((place) => {
            const [x, y] = at(place);
            return ring(left + x, y0 + y, numberOf(each.id));
          }),
        ),
      ];
    },
  };
}

const ring = (x: number, y: number, number: number): MatShape[] => [
  { kind: 'circle', x, y, r: PLACE_R, what: 'place' },
  text(x, y + PLACE_R + 2.4, String(number), 2.2, 'middle'),
];

/** One set in words, its length as a bar to hold a screw against, and a tray for those that have no place on a panel. */
export function legend(set: MatFastener, number: number, room: number): Block {
  const trays = Math.max(0, set.count - set.places.length);
  const perRow = Math.max(1, Math.floor(room / (3 * PLACE_R)));
  const rows = Math.ceil(trays / perRow);
  const head = LINE + 4;
  return {
    width: room,
    height: head + rows * 3 * PLACE_R,
    gap: 2,
    shapesAt: (left, top) => [
      text(left, top + TEXT, `${number}  ${set.name}: ${set.count} × ${set.drive}, ${set.lengthMm} mm`),
      { kind: 'line', x1: left, y1: top + LINE + 1.5, x2: left + set.lengthMm, y2: top + LINE + 1.5, what: 'length' },
      ...Array.from({ length: trays }, (_, i): MatShape => {
        const x = left + PLACE_R + (i % perRow) * 3 * PLACE_R;
        const y = top + head + PLACE_R + Math.floor(i / perRow) * 3 * PLACE_R;
        return { kind: 'circle', x, y, r: PLACE_R, what: 'tray' };
      }),
    ],
  };
}

/** 100 mm across at the foot, and 100 mm down at the right edge of the sheet, with a tick each millimetre. */
export function rulers(left: number, bottom: number, right: number, pageHeight: number): MatShape[] {
  const top = (pageHeight - 100) / 2;
  const ticks = Array.from({ length: 101 }, (_, mm) => mm);
  const long = (mm: number): number => (mm % 10 === 0 ? 4 : mm % 5 === 0 ? 3 : 2);
  return [
    { kind: 'line', x1: left, y1: bottom, x2: left + 100, y2: bottom, what: 'ruler' },
    ...ticks.map((mm): MatShape => ({ kind: 'line', x1: left + mm, y1: bottom, x2: left + mm, y2: bottom - long(mm), what: 'tick' })),
    text(left, bottom - 6, '0'),
    text(left + 94, bottom - 6, '100 mm'),
    { kind: 'line', x1: right, y1: top, x2: right, y2: top + 100, what: 'ruler' },
    ...ticks.map((mm): MatShape => ({ kind: 'line', x1: right, y1: top + mm, x2: right - long(mm), y2: top + mm, what: 'tick' })),
    text(right - 8, top - 1.5, '0'),
    text(right - 10, top + 104, '100 mm'),
  ];
}
