/** What a pad is to a part: copper on one side, a plated hole for a leg, or a bare hole for a peg. */
export type PadKind = 'surface' | 'through' | 'peg';
export type PadShape = 'rect' | 'round-rect' | 'oval' | 'circle' | 'outline';
export type Side = 'front' | 'back';

/** x to the right and y up, mm. */
export type Point = readonly [x: number, y: number];

/** A drilled or milled hole: sizes along the pad's own axes, and its middle from that of the copper, mm. */
export interface Drill {
  readonly wMm: number;
  readonly hMm: number;
  readonly dxMm: number;
  readonly dyMm: number;
}

export interface Pad {
  /** Number or name of the pin; empty when it has none. Several pads may share one. */
  readonly name: string;
  readonly kind: PadKind;
  readonly shape: PadShape;
  readonly xMm: number;
  readonly yMm: number;
  /** Sizes along the pad's own axes, before it is turned. */
  readonly wMm: number;
  readonly hMm: number;
  /** Against the clock, degrees. */
  readonly turnDeg: number;
  /** Radius of the corners of a `round-rect`, mm; else 0. */
  readonly cornerMm: number;
  readonly drill: Drill | null;
  /** For `outline`: rings about the pad's middle in its own axes, mm; what any of them covers is copper. Else empty. */
  readonly rings: readonly (readonly Point[])[];
  readonly side: Side;
}

/** What decides whether terminals bend, which fillets are wanted and what has to be asked. */
export type PartKind = 'chip' | 'gull-wing' | 'j-lead' | 'no-lead' | 'legs' | 'wire-legs' | 'connector' | 'ribbon-socket' | 'other';

/** Where something is plugged in: the way it faces (0 = along x, against the clock) and how far its edge is from the origin that way. */
export interface Mouth {
  readonly facesDeg: number;
  readonly reachMm: number | null;
}

/** The pads of a place on a board, or the terminals of a part, seen from the side on which the part sits. */
export interface Pattern {
  readonly name: string;
  readonly kind: PartKind;
  /** `lands`: what is soldered to, as for a board or from the pattern that a part's maker asks for. `feet`: the terminals themselves. */
  readonly basis: 'lands' | 'feet';
  /** False when the names of pads are not known to be those of pins. */
  readonly numbered: boolean;
  readonly pads: readonly Pad[];
  /** Net by name of a pad, where it is known. Pads of one net count as one. */
  readonly nets: Readonly<Record<string, string>>;
  /** Of a part its height; of a place the room above it, mm. */
  readonly heightMm: number | null;
  readonly mouth: Mouth | null;
  /** Of a ribbon socket: the side on which it touches the ribbon. */
  readonly contacts: 'top' | 'bottom' | 'both' | null;
}

/** How a part is laid over a place: turned about its own origin against the clock, then moved. */
export interface Placing {
  readonly turnDeg: number;
  readonly dxMm: number;
  readonly dyMm: number;
}

/** Everything of a pattern that is seldom known, as unknown. */
export const UNKNOWN: Pick<Pattern, 'nets' | 'heightMm' | 'mouth' | 'contacts'> = { nets: {}, heightMm: null, mouth: null, contacts: null };

/** A plain pad without hole, unturned, on the front: what is not given. */
export const PLAIN_PAD: Pick<Pad, 'kind' | 'shape' | 'turnDeg' | 'cornerMm' | 'drill' | 'rings' | 'side'> = {
  kind: 'surface',
  shape: 'rect',
  turnDeg: 0,
  cornerMm: 0,
  drill: null,
  rings: [],
  side: 'front',
};
