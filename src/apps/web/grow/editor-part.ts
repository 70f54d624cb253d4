import { packageNamed, turned } from '../../../bench/models/packages.ts';
import { padsOf, type BoardPad } from '../../../bench/models/pads.ts';
import type { DrawnPart } from '../board/drawn-part.ts';
import type { Place } from '../board/frame.ts';

export type Side = 'front' | 'back';

/** A part as a person marks it on the picture. Places in mm from the lower left corner of the front, back ones as seen through from the front. */
export interface EditorPart {
  readonly ref: string;
  readonly kind: string;
  readonly value: string;
  /** Of the table of packages; empty where the pins were marked one by one, as a row or as a grid. */
  readonly package: string;
  readonly side: Side;
  readonly x: number;
  readonly y: number;
  /** Degrees against the clock, 0 to below 360. */
  readonly rotation: number;
  /** Block of the model that it belongs to; empty while nobody has said. */
  readonly block: string;
  /** Where the pins are that were marked, in order from pin 1; empty where the package says it. */
  readonly pins: readonly (readonly [x: number, y: number])[];
}

/** Side of a pad that was marked by its middle alone, mm. */
const PIN_MM = 0.8;
/** Room that is drawn around marked pins, mm. */
const AROUND_MM = 0.6;
/** Places are kept to so much of a mm: finer than any click. */
const STEPS_PER_MM = 1000;

export const rounded = (mm: number): number => Math.round(mm * STEPS_PER_MM) / STEPS_PER_MM;

/** The pads of a part: the marked pins, or those of its package. */
export function padsOfPart(part: EditorPart): BoardPad[] {
  if (part.pins.length === 0) return padsOf({ ...part, nets: [] });
  const { ref, side } = part;
  return part.pins.map(([x, y], i) => ({ ref, side, pin: i + 1, net: null, x, y, w: PIN_MM, h: PIN_MM }));
}

/** A part as the board picture draws it and as a finger finds it; `netOf` says what is known of a pin. */
export function drawn(part: EditorPart, netOf: (pin: string) => string | null = () => null): DrawnPart {
  const { ref, kind, value, block, side, x, y, rotation } = part;
  const pads = padsOfPart(part).map((pad) => (pad.pin === null ? pad : { ...pad, net: netOf(pinName(ref, pad.pin)) }));
  return { ref, value, block, side, x, y, rotation, ...outline(part), pads, isTestPoint: kind === 'test-point' || kind === 'hole' };
}

/** A pin as connections name it: U1.3. */
export const pinName = (ref: string, pin: number): string => `${ref}.${pin}`;

function outline({ package: name, pins, x, y, rotation }: EditorPart): { w: number; h: number } {
  if (pins.length === 0) return packageNamed(name)?.court ?? { w: 1, h: 1 };
  const along = pins.map((pin) => turned(pin[0] - x, pin[1] - y, -rotation));
  const reach = (axis: 0 | 1): number => 2 * Math.max(...along.map((each) => Math.abs(each[axis]))) + 2 * AROUND_MM;
  return { w: reach(0), h: reach(1) };
}

/** The part moved by mm. */
export const shifted = (part: EditorPart, by: Place): EditorPart => ({
  ...part,
  x: rounded(part.x + by.x),
  y: rounded(part.y + by.y),
  pins: part.pins.map(([x, y]) => [rounded(x + by.x), rounded(y + by.y)] as const),
});

/** The part turned about its own middle by degrees against the clock, as seen from the front. */
export const turnedPart = (part: EditorPart, degrees: number): EditorPart => ({
  ...part,
  rotation: (((part.rotation + degrees) % 360) + 360) % 360,
  pins: part.pins.map(([x, y]) => {
    const [dx, dy] = turned(x - part.x, y - part.y, degrees);
    return [rounded(part.x + dx), rounded(part.y + dy)] as const;
  }),
});

/** The letters and the number of a reference such as VR2; null where it is none. */
export function splitRef(ref: string): { letters: string; number: number } | null {
  const match = /^([A-Za-z]{1,8})(\d{1,5})$/.exec(ref.trim());
  return match && { letters: match[1]!.toUpperCase(), number: Number(match[2]) };
}

/** The first reference with these letters, from a number on, that is not taken. */
export function nextRef(taken: { has(ref: string): boolean }, letters: string, from: number): string {
  let number = from;
  while (taken.has(`${letters}${number}`)) number += 1;
  return `${letters}${number}`;
}
