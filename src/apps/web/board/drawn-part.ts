import { packageNamed } from '../../../bench/models/packages.ts';
import { padsOf, type BoardPad } from '../../../bench/models/pads.ts';
import type { Place } from './frame.ts';

/** A part as an answer of the bench places it. */
export interface PlacedPart {
  readonly ref: string;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly rotation_deg: number;
  readonly side: 'front' | 'back';
  readonly value: string;
  readonly package: string;
  readonly block: string;
  readonly nets: readonly (string | null)[];
}

/** A part as it is drawn: its outline about its place, unturned, and its pads on the board, mm. */
export interface DrawnPart {
  readonly ref: string;
  readonly value: string;
  readonly block: string;
  readonly side: 'front' | 'back';
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly w: number;
  readonly h: number;
  readonly pads: readonly BoardPad[];
  /** A bare place to put the probe. */
  readonly isTestPoint: boolean;
}

/** Free room of a package around its body and pads, mm. */
const MARGIN_MM = 0.2;

export const drawnParts = (parts: readonly PlacedPart[]): DrawnPart[] => parts.map(drawnPart);

function drawnPart({ ref, value, block, side, x_mm: x, y_mm: y, rotation_deg: rotation, package: name, nets }: PlacedPart): DrawnPart {
  const isTestPoint = name === 'TP';
  const { w, h } = packageNamed(name)?.court ?? { w: 1, h: 1 };
  const margin = isTestPoint ? 0 : 2 * MARGIN_MM;
  const pads = padsOf({ ref, x, y, rotation, side, package: name, nets });
  return { ref, value, block, side, x, y, rotation, w: w - margin, h: h - margin, pads, isTestPoint };
}

/** What a finger or the mouse points at. */
export interface Hit {
  readonly part: DrawnPart;
  /** Pin under the finger; null when it is on the body. */
  readonly pin: number | null;
  /** Chosen from the list and not by pointing. */
  readonly isListed?: boolean;
}

/** What lies at a place of one side: the nearest pad with a pin within `reach` mm, else the smallest part there; null where there is none. */
export function hitAt(parts: readonly DrawnPart[], side: 'front' | 'back', at: Place, reach: number): Hit | null {
  const here = parts.filter((part) => part.side === side);
  const pads = here.flatMap((part) => part.pads.flatMap((pad) => (pad.pin === null ? [] : [{ part, pin: pad.pin, gap: gapTo(pad, at) }])));
  const [nearest] = pads.filter(({ gap }) => gap <= reach).sort((a, b) => a.gap - b.gap);
  const [under] = here.filter((part) => isOn(part, at)).sort((a, b) => a.w * a.h - b.w * b.h);
  if (nearest && (nearest.gap === 0 || !under)) return { part: nearest.part, pin: nearest.pin };
  return under ? { part: under, pin: null } : null;
}

const gapTo = (pad: BoardPad, at: Place): number =>
  Math.hypot(Math.max(Math.abs(at.x - pad.x) - pad.w / 2, 0), Math.max(Math.abs(at.y - pad.y) - pad.h / 2, 0));

function isOn({ x, y, w, h, rotation }: DrawnPart, at: Place): boolean {
  const angle = (-rotation * Math.PI) / 180;
  const [dx, dy] = [at.x - x, at.y - y];
  const along = dx * Math.cos(angle) - dy * Math.sin(angle);
  const across = dx * Math.sin(angle) + dy * Math.cos(angle);
  return Math.abs(along) <= w / 2 && Math.abs(across) <= h / 2;
}
