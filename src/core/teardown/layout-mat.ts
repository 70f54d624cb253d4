import { legend, panel, rulers, title, type Point } from './mat-shapes.ts';

/** Papers in mm, upright. A4: ISO 216; Letter: ANSI/ASME Y14.1 (8.5 × 11 in). */
export const PAPERS = { A4: { width: 210, height: 297 }, Letter: { width: 215.9, height: 279.4 } } as const;
export type Paper = keyof typeof PAPERS;

/** Everything on the mat, in mm from the upper left corner of the page, at true scale. Text is placed by its baseline. */
export type MatShape =
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly r: number; readonly what: 'place' | 'tray' }
  | {
      readonly kind: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly what: 'ruler' | 'tick' | 'length';
    }
  | { readonly kind: 'rect'; readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly mm: number;
      readonly anchor: 'start' | 'middle';
    };

export interface MatPage {
  readonly shapes: readonly MatShape[];
}

export interface MatFastener {
  readonly id: string;
  readonly name: string;
  readonly drive: string;
  readonly lengthMm: number;
  readonly count: number;
  /** The panel on which its places lie; where it has none, or too few, the rest gets places in a tray. */
  readonly panel: string;
  /** mm from the lower left corner of the panel, as one looks at it. */
  readonly places: readonly Point[];
}

/** A face with screws in it, seen from outside: the back of the shell, the front of the board. */
export interface MatPanel {
  readonly id: string;
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

export type Mat =
  | { readonly ok: true; readonly paper: Paper; readonly widthMm: number; readonly heightMm: number; readonly pages: readonly MatPage[] }
  /** A panel that no page takes at true scale, even lying on its side. */
  | { readonly ok: false; readonly code: 'panel-too-large'; readonly panel: string; readonly roomMm: readonly [number, number] };

const MARGIN = 12;
/** Kept for the rulers at the foot and at the right. */
const FOOT = 22;
const SIDE = 12;
const HEAD = 14;

/**
 * The mat on which the fasteners of a device lie while it is open: each panel at true scale with a numbered place for each
 * screw, a tray for those without a place, a bar of its true length for each set, and rulers of 100 mm across and down to
 * check the print by (printers like to shrink a page). Panels that stand too high are laid on their side.
 */
export function layoutMat(heading: string, panels: readonly MatPanel[], fasteners: readonly MatFastener[], paper: Paper): Mat {
  const { width, height } = PAPERS[paper];
  const room: readonly [number, number] = [width - 2 * MARGIN - SIDE, height - 2 * MARGIN - HEAD - FOOT];
  const used = panels.filter(({ id }) => fasteners.some((each) => each.panel === id && each.places.length > 0));
  const blocks: Block[] = [];
  for (const each of used) {
    const mine = fasteners.filter(({ panel: on }) => on === each.id);
    const block = [false, true].map((lying) => panel(each, mine, numberOf(fasteners), lying)).find((size) => fits(size, room));
    if (!block) return { ok: false, code: 'panel-too-large', panel: each.id, roomMm: room };
    blocks.push(block);
  }
  blocks.push(...fasteners.map((each) => legend(each, numberOf(fasteners)(each.id), room[0])));
  const pages = stacked(blocks, room[1]).map((page, i, all) => ({
    shapes: [
      ...title(heading, i + 1, all.length, MARGIN, MARGIN),
      ...page.flatMap(({ block, top }) => block.shapesAt(MARGIN, MARGIN + HEAD + top)),
      ...rulers(MARGIN, height - MARGIN, width - MARGIN, height),
    ],
  }));
  return { ok: true, paper, widthMm: width, heightMm: height, pages };
}

/** Something that takes its place on a page as a whole. */
export interface Block {
  readonly width: number;
  readonly height: number;
  /** Kept free below it. */
  readonly gap: number;
  shapesAt(x: number, y: number): readonly MatShape[];
}

const fits = (block: Block, [width, height]: readonly [number, number]): boolean => block.width <= width && block.height <= height;

const numberOf =
  (fasteners: readonly MatFastener[]) =>
  (id: string): number =>
    fasteners.findIndex((each) => each.id === id) + 1;

/** Blocks one below the other; a block that does not fit any more begins a page. There is always one page. */
function stacked(blocks: readonly Block[], room: number): { block: Block; top: number }[][] {
  const pages: { block: Block; top: number }[][] = [[]];
  let top = 0;
  for (const block of blocks) {
    if (top > 0 && top + block.height > room) {
      pages.push([]);
      top = 0;
    }
    pages.at(-1)!.push({ block, top });
    top += block.height + block.gap;
  }
  return pages;
}
