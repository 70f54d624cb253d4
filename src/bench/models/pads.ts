import type { Placement } from '../../core/circuit/index.ts';
import type { ModelCircuit } from './model-circuit.ts';
import { packageNamed, turned } from './packages.ts';

/** What of a placed part says where its pads lie. */
export interface Placed {
  readonly ref: string;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly side: 'front' | 'back';
  readonly package: string;
  /** Net of each pin, in the order of pins; null for a pin that is joined to nothing. */
  readonly nets: readonly (string | null)[];
}

/** A pad on the board, mm from the lower left corner of the front; back ones too are as seen through from the front. */
export interface BoardPad {
  readonly ref: string;
  /** From 1; null for an anchor. */
  readonly pin: number | null;
  readonly net: string | null;
  readonly side: 'front' | 'back';
  readonly x: number;
  readonly y: number;
  /** Size along x and y of the board; of a part turned by other than quarters, along its own axes. */
  readonly w: number;
  readonly h: number;
}

/** The pads of a part: its package mirrored when it sits on the back, turned against the clock, moved to its place. */
export function padsOf(part: Placed): BoardPad[] {
  const { ref, side, rotation } = part;
  const sideways = isSideways(rotation);
  return (packageNamed(part.package)?.pads ?? []).map(({ pin, x, y, w, h }) => {
    const [dx, dy] = turned(side === 'back' ? -x : x, y, rotation);
    const net = pin === null ? null : (part.nets[pin - 1] ?? null);
    return { ref, pin, net, side, x: part.x + dx, y: part.y + dy, w: sideways ? h : w, h: sideways ? w : h };
  });
}

/** The pads of all parts of a circuit that carry a net, as the search for neighbours wants them. */
export function placementOf({ parts }: Pick<ModelCircuit, 'parts'>): Placement {
  const placed = parts.flatMap((part) => (part.side === 'off' ? [] : padsOf({ ...part, side: part.side })));
  const pads = placed.flatMap(({ ref, pin, net, side, x, y, w, h }) =>
    net === null ? [] : [{ component: ref, pin: String(pin), net, side, xMm: x, yMm: y, widthMm: w, heightMm: h }],
  );
  return { pads };
}

/** The room that a part takes on its side of the board, as a rectangle about its place, mm. */
export function courtyardOf(part: Omit<Placed, 'ref' | 'nets' | 'side'>): { x: number; y: number; w: number; h: number } {
  const { w, h } = packageNamed(part.package)?.court ?? { w: 0, h: 0 };
  const angle = (part.rotation * Math.PI) / 180;
  const [cos, sin] =
    part.rotation % 90 === 0 ? (isSideways(part.rotation) ? [0, 1] : [1, 0]) : [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return { x: part.x, y: part.y, w: w * cos + h * sin, h: w * sin + h * cos };
}

const isSideways = (rotation: number): boolean => Math.abs(rotation % 180) === 90;
