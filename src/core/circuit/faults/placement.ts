/** Where the pads of a board lie, in mm; x to the right and y up on the front, as the placement file has it. */
export interface Pad {
  /** Component as `componentsOf` names it, in any case. */
  readonly component: string;
  readonly pin: string;
  /** Node of the netlist. */
  readonly net: string;
  /** A plated hole is on both. */
  readonly side: 'front' | 'back' | 'both';
  readonly xMm: number;
  readonly yMm: number;
  /** 0 where it is not known: distances are then from middle to middle. */
  readonly widthMm?: number;
  readonly heightMm?: number;
}

export interface Placement {
  readonly pads: readonly Pad[];
}

/** An area that the person has drawn around dried liquid: corners in mm. */
export interface LiquidRegion {
  readonly id: string;
  readonly side: 'front' | 'back';
  readonly polygon: readonly (readonly [number, number])[];
}

/** Gap between the edges of two pads, mm; 0 where they touch. */
export function gapMm(a: Pad, b: Pad): number {
  const along = (p: number, q: number, sizes: number): number => Math.max(Math.abs(p - q) - sizes / 2, 0);
  const x = along(a.xMm, b.xMm, (a.widthMm ?? 0) + (b.widthMm ?? 0));
  const y = along(a.yMm, b.yMm, (a.heightMm ?? 0) + (b.heightMm ?? 0));
  return Math.hypot(x, y);
}

export const shareSide = (a: Pad, b: Pad): boolean => a.side === b.side || a.side === 'both' || b.side === 'both';

/** Whether the middle of a pad lies in a region: even–odd rule along a ray to the right. */
export function isInside({ xMm, yMm, side }: Pad, region: LiquidRegion): boolean {
  if (side !== region.side && side !== 'both') return false;
  let inside = false;
  region.polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = region.polygon[(i + 1) % region.polygon.length]!;
    if (y1 > yMm !== y2 > yMm && xMm < x1 + ((x2 - x1) * (yMm - y1)) / (y2 - y1)) inside = !inside;
  });
  return inside;
}

/** Pads of different nets that lie closer than `withinMm` on one side, each pair once, nearest first. */
export function neighbours(pads: readonly Pad[], withinMm: number): [Pad, Pad][] {
  const reach = withinMm + 2 * Math.max(0, ...pads.map(({ widthMm = 0, heightMm = 0 }) => Math.max(widthMm, heightMm)));
  const sorted = [...pads].sort((a, b) => a.xMm - b.xMm);
  const found: { pair: [Pad, Pad]; gap: number }[] = [];
  sorted.forEach((a, i) => {
    for (let k = i + 1; k < sorted.length && sorted[k]!.xMm - a.xMm <= reach; k++) {
      const b = sorted[k]!;
      if (a.net === b.net || !shareSide(a, b)) continue;
      const gap = gapMm(a, b);
      if (gap < withinMm) found.push({ pair: [a, b], gap });
    }
  });
  return found.sort((a, b) => a.gap - b.gap).map(({ pair }) => pair);
}
