import { FitError } from './fit-error.ts';
import { PLAIN_PAD, UNKNOWN, type PadKind, type Pattern, type PartKind } from './pattern.ts';

/** A pad as it was marked on a photo: its middle and its sizes along the photo, px from the upper left. */
export interface MarkedPad {
  readonly name: string;
  readonly kind: PadKind;
  readonly round: boolean;
  readonly xPx: number;
  readonly yPx: number;
  readonly wPx: number;
  readonly hPx: number;
}

/** Two marks whose distance is known: a ruler, or the edges of the board. */
export interface PhotoScale {
  readonly fromPx: readonly [x: number, y: number];
  readonly toPx: readonly [x: number, y: number];
  readonly apartMm: number;
}

/** Millimetres of one pixel. Throws `bad-scale` when the marks lie on each other or nothing lies between them. */
export function mmPerPx({ fromPx, toPx, apartMm }: PhotoScale): number {
  const apartPx = Math.hypot(toPx[0] - fromPx[0], toPx[1] - fromPx[1]);
  if (!(apartPx > 0 && apartMm > 0))
    throw new FitError('bad-scale', 'a scale needs two marks apart from each other and their distance in mm');
  return apartMm / apartPx;
}

/**
 * The pattern of pads marked on a photo taken straight from above: origin in the middle of the marks, y up. Pegs and legs are holes as large as they were marked.
 * Names count as pins only if every pad has one.
 */
export function patternFromPhoto(name: string, kind: PartKind, marks: readonly MarkedPad[], scale: PhotoScale): Pattern {
  const mm = mmPerPx(scale);
  const bad = marks.find(({ wPx, hPx }) => !(wPx > 0 && hPx > 0));
  if (bad) throw new FitError('bad-size', `the mark ${bad.name || 'without a name'} has no size`);
  const [xs, ys] = [marks.map(({ xPx }) => xPx), marks.map(({ yPx }) => yPx)];
  const [midX, midY] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  const named = marks.every((mark) => mark.kind === 'peg' || mark.name !== '');
  const pads = marks.map((mark, i) => {
    const [wMm, hMm] = [mark.wPx * mm, mark.hPx * mm];
    return {
      ...PLAIN_PAD,
      name: mark.name === '' && mark.kind !== 'peg' ? `#${i + 1}` : mark.name,
      kind: mark.kind,
      shape: mark.round ? ('oval' as const) : ('rect' as const),
      xMm: (mark.xPx - midX) * mm,
      yMm: (midY - mark.yPx) * mm,
      wMm,
      hMm,
      drill: mark.kind === 'surface' ? null : { wMm, hMm, dxMm: 0, dyMm: 0 },
    };
  });
  return { ...UNKNOWN, name, kind, basis: 'lands', numbered: named, pads };
}
