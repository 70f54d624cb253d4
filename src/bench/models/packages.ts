/** A pad of a package: its pin and its place from the middle of the package, unturned, mm; x to the right, y up. */
export interface PackagePad {
  /** Number of the pin from 1; empty for an anchor, which holds the part and carries no net. */
  readonly pin: number | null;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Where the pads of a package lie, and the room that it needs on its side of the board, mm. */
export interface Package {
  readonly pads: readonly PackagePad[];
  readonly court: { readonly w: number; readonly h: number };
}

type Size = readonly [w: number, h: number];

/** What is left free around pads and body, mm (common practice, no source). */
const MARGIN_MM = 0.2;

/** Room for the pads and a body about the middle. */
function withCourt(pads: readonly PackagePad[], [bodyW, bodyH]: Size): Package {
  const reach = (half: (pad: PackagePad) => number): number => 2 * Math.max(...pads.map(half));
  const w = Math.max(
    bodyW,
    reach(({ x, w: own }) => Math.abs(x) + own / 2),
  );
  const h = Math.max(
    bodyH,
    reach(({ y, h: own }) => Math.abs(y) + own / 2),
  );
  return { pads, court: { w: w + 2 * MARGIN_MM, h: h + 2 * MARGIN_MM } };
}

/** Two pads: pin 1 on the left. */
const pair = (apart: number, [w, h]: Size, body: Size): Package =>
  withCourt(
    [-1, 1].map((side, i) => ({ pin: i + 1, x: (side * apart) / 2, y: 0, w, h })),
    body,
  );

/** Pins `first` … in a row along x at height y, from left to right, or from right to left. */
const row = (first: number, count: number, pitch: number, y: number, [w, h]: Size, leftwards = false): PackagePad[] =>
  Array.from({ length: count }, (_, i) => {
    const along = (i - (count - 1) / 2) * pitch;
    return { pin: first + i, x: leftwards ? -along : along, y, w, h };
  });

/** Two rows: pin 1 at the lower left, counted against the clock. */
const twoRows = (count: number, pitch: number, apart: number, pad: Size, body: Size): Package => {
  const half = count / 2;
  return withCourt([...row(1, half, pitch, -apart / 2, pad), ...row(half + 1, half, pitch, apart / 2, pad, true)], body);
};

/** Four sides: pin 1 at the left of the lower side, counted against the clock. */
function fourSides(count: number, pitch: number, apart: number, [w, h]: Size, body: Size): Package {
  const side = row(1, count / 4, pitch, -apart / 2, [w, h]);
  const pads = [0, 1, 2, 3].flatMap((quarter) =>
    side.map((pad) => {
      const [x, y] = turned(pad.x, pad.y, 90 * quarter);
      return { pin: pad.pin! + (quarter * count) / 4, x, y, w: quarter % 2 === 0 ? w : h, h: quarter % 2 === 0 ? h : w };
    }),
  );
  return withCourt(pads, body);
}

/** A row of contacts with an anchor on either side. */
const anchored = (count: number, pitch: number, y: number, pad: Size, anchorX: number, anchor: Size, body: Size): Package =>
  withCourt(
    [...row(1, count, pitch, y, pad), ...[-anchorX, anchorX].map((x) => ({ pin: null, x, y: 0, w: anchor[0], h: anchor[1] }))],
    body,
  );

/** (x, y) turned against the clock about the middle, exact for quarters. */
export function turned(x: number, y: number, degrees: number): [number, number] {
  const quarter = (((degrees / 90) % 4) + 4) % 4;
  if (Number.isInteger(quarter))
    return (
      [
        [x, y],
        [-y, x],
        [-x, -y],
        [y, -x],
      ] as const
    )[quarter]!.map((v) => v + 0) as [number, number];
  const angle = (degrees * Math.PI) / 180;
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
}

/** Packages of one size. Land patterns are common practice, no source; docs/model-format.md has the table in words. */
const FIXED: Readonly<Record<string, Package>> = {
  '0402': pair(0.96, [0.56, 0.62], [1, 0.5]),
  '0603': pair(1.6, [0.8, 0.95], [1.6, 0.8]),
  '0805': pair(1.9, [1, 1.4], [2, 1.25]),
  '1206': pair(3, [1.1, 1.8], [3.2, 1.6]),
  'CAN-4': pair(3.6, [1.8, 1.2], [4.3, 4.3]),
  'CAN-5': pair(4.4, [2, 1.2], [5.3, 5.3]),
  'CAN-6': pair(5.4, [2.4, 1.4], [6.6, 6.6]),
  'COIL-4': pair(3.2, [1.2, 3.4], [4, 4]),
  'COIL-5': pair(4.2, [1.4, 4], [5, 5]),
  'SOD-323': pair(2.2, [0.7, 0.6], [1.8, 1.3]),
  'SOD-123': pair(3.3, [0.9, 1.2], [2.7, 1.6]),
  'SOT-23': withCourt([...row(1, 2, 1.9, -1.1, [0.8, 0.9]), { pin: 3, x: 0, y: 1.1, w: 0.8, h: 0.9 }], [2.9, 1.3]),
  'SOT-23-5': withCourt([...row(1, 3, 0.95, -1.2, [0.6, 1]), ...row(4, 2, 1.9, 1.2, [0.6, 1], true)], [2.9, 1.6]),
  'SOT-23-6': withCourt([...row(1, 3, 0.95, -1.2, [0.6, 1]), ...row(4, 3, 0.95, 1.2, [0.6, 1], true)], [2.9, 1.6]),
  'SOT-89': withCourt([...row(1, 3, 1.5, -1.8, [0.9, 1.4]), { pin: 2, x: 0, y: 1.5, w: 1.8, h: 2 }], [4.5, 2.5]),
  'SOIC-8': twoRows(8, 1.27, 5.4, [0.6, 1.5], [4.9, 3.9]),
  'SOIC-14': twoRows(14, 1.27, 5.4, [0.6, 1.5], [8.7, 3.9]),
  'QFP-32': fourSides(32, 0.8, 8.1, [0.45, 0.7], [7, 7]),
  'SWITCH-3': anchored(3, 2.2, -2, [0.9, 1.2], 4.4, [1.2, 1.6], [8, 3.6]),
  'LEAF-2': pair(5, [1.6, 1.6], [7, 3]),
  'WHEEL-3': withCourt(row(1, 3, 2.2, 3.3, [1, 1.2]), [8, 8]),
  'WHEEL-6': withCourt([...row(1, 3, 2.2, 3.3, [1, 1.2]), ...row(4, 3, 2.2, 1.7, [1, 1.2])], [8, 8]),
  'TRIMMER-3': withCourt([...row(1, 2, 2.4, -2.2, [1, 1.2]), { pin: 3, x: 0, y: 2.2, w: 1.4, h: 1.2 }], [4.6, 4.6]),
  'KEY-2': pair(3.2, [0.8, 2.4], [4, 4]),
  'SPRING-1': withCourt([{ pin: 1, x: 0, y: 0, w: 4, h: 2.4 }], [5, 5]),
  TP: { pads: [{ pin: 1, x: 0, y: 0, w: 0.8, h: 0.8 }], court: { w: 0.8, h: 0.8 } },
};

/** Packages whose name ends in the count of their contacts, such as SLOT-12. */
const COUNTED: Readonly<Record<string, (count: number) => Package>> = {
  SLOT: (n) => anchored(n, 2.54, -1.8, [1.1, 1.6], 1.27 * n + 1.2, [1.8, 2.2], [2.54 * n + 4, 5]),
  FLAT: (n) => anchored(n, 1, -1.6, [0.5, 1.3], n / 2 + 1.6, [1.2, 1.8], [n + 4, 3.6]),
  PORT: (n) => anchored(n, 0.8, 2, [0.45, 1.2], 0.4 * n + 2, [1.2, 2], [0.8 * n + 3.6, 4.6]),
  SOCKET: (n) => anchored(n, 1.5, 1.8, [0.8, 1.4], 0.75 * n + 1.4, [1.2, 1.8], [1.5 * n + 3, 4.4]),
  JACK: (n) => anchored(n, 1.8, 2.4, [1, 1.4], 0.9 * n + 1, [1.2, 2], [1.8 * n + 2.4, 5.6]),
  WIRES: (n) => withCourt(row(1, n, 2.2, 0, [1.4, 1.8]), [2.2 * n, 2]),
};
const MOST_CONTACTS = 200;

/** The package of a name as a placement file gives it, without regard to case; undefined when it is not in the table. */
export function packageNamed(name: string): Package | undefined {
  const key = name.toUpperCase();
  if (Object.hasOwn(FIXED, key)) return FIXED[key];
  const counted = /^([A-Z]+)-([1-9]\d{0,2})$/.exec(key);
  if (!counted || !Object.hasOwn(COUNTED, counted[1]!) || Number(counted[2]) > MOST_CONTACTS) return undefined;
  return COUNTED[counted[1]!]!(Number(counted[2]));
}

/** All names of packages, those with a count as `SLOT-n`. */
export const packageNames = (): string[] => [...Object.keys(FIXED), ...Object.keys(COUNTED).map((name) => `${name}-n`)];
