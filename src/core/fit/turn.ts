import type { Pad, Pattern, Placing, Point } from './pattern.ts';

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** Turns points against the clock about the origin; exact for quarters. */
export function turner(degrees: number): (point: Point) => Point {
  const quarter = sameTurn(degrees) / 90;
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = Number.isInteger(quarter) ? QUARTERS[quarter]! : ([Math.cos(angle), Math.sin(angle)] as const);
  return ([x, y]) => [x * cos - y * sin, x * sin + y * cos];
}

/** (x, y) turned against the clock about the origin; exact for quarters. */
export const turnPoint = (point: Point, degrees: number): Point => turner(degrees)(point);

/** 0 to below 360. */
export const sameTurn = (degrees: number): number => ((degrees % 360) + 360) % 360;

const turned = (pad: Pad, placing: Placing): Pad => {
  const [x, y] = turnPoint([pad.xMm, pad.yMm], placing.turnDeg);
  return { ...pad, xMm: x + placing.dxMm, yMm: y + placing.dyMm, turnDeg: sameTurn(pad.turnDeg + placing.turnDeg) };
};

/** A pattern laid over another: turned about its origin, then moved; its mouth goes with it. */
export function placed(pattern: Pattern, placing: Placing): Pattern {
  const mouth = pattern.mouth && {
    facesDeg: sameTurn(pattern.mouth.facesDeg + placing.turnDeg),
    reachMm: pattern.mouth.reachMm === null ? null : pattern.mouth.reachMm + along(placing, pattern.mouth.facesDeg + placing.turnDeg),
  };
  return { ...pattern, pads: pattern.pads.map((pad) => turned(pad, placing)), mouth };
}

function along({ dxMm, dyMm }: Placing, degrees: number): number {
  const [x, y] = turnPoint([1, 0], degrees);
  return dxMm * x + dyMm * y;
}

/** A pattern as seen from the other side: mirrored left to right. */
export function mirrored(pattern: Pattern): Pattern {
  const pads = pattern.pads.map((pad) => ({
    ...pad,
    xMm: -pad.xMm,
    turnDeg: sameTurn(-pad.turnDeg),
    drill: pad.drill && { ...pad.drill, dxMm: -pad.drill.dxMm },
    rings: pad.rings.map((ring) => ring.map(([x, y]): Point => [-x, y])),
    side: pad.side === 'front' ? ('back' as const) : ('front' as const),
  }));
  return { ...pattern, pads, mouth: pattern.mouth && { ...pattern.mouth, facesDeg: sameTurn(180 - pattern.mouth.facesDeg) } };
}
