import { PLAIN_PAD, UNKNOWN, type Pad, type Pattern } from '../../../core/fit/index.ts';
import { padsOfPart, type EditorPart } from './editor-part.ts';

/**
 * The pads of a marked part as a place for parts, seen from its own side, about its middle. Pins that were marked by their middles alone get pads as wide as half of
 * the way to the next pin, for their size is not known.
 */
export function placeOf(part: EditorPart): Pattern {
  const flip = part.side === 'back' ? -1 : 1;
  const size = part.pins.length > 1 ? pitchOf(part.pins) / 2 : null;
  const pads = padsOfPart(part).map(({ pin, x, y, w, h }): Pad => {
    const at = { xMm: flip * (x - part.x), yMm: y - part.y };
    return { ...PLAIN_PAD, ...at, name: pin === null ? '' : String(pin), wMm: size ?? w, hMm: size ?? h };
  });
  return { ...UNKNOWN, name: part.ref, kind: part.kind === 'connector' ? 'connector' : 'other', basis: 'lands', numbered: true, pads };
}

/** The smallest way between two pins, mm. */
const pitchOf = (pins: EditorPart['pins']): number =>
  Math.min(...pins.flatMap(([x, y], i) => pins.slice(i + 1).map(([a, b]) => Math.hypot(a - x, b - y))));
