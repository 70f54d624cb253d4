import { PLAIN_PAD, type Pad, type Pattern } from '../../core/fit/index.ts';
import type { LandPattern } from '../events/index.ts';

type PadRecord = LandPattern['pads'][number];

/** Pads of a pattern that is not numbered get these names, which are not those of pins, where they have none. */
const unnamed = (index: number): string => `#${index + 1}`;

/** A pattern from how it is kept. Nothing of it is judged here. */
export function patternOf(record: LandPattern): Pattern {
  const nets = Object.fromEntries(record.pads.flatMap(({ pin, net }) => (net === undefined || pin === '' ? [] : [[pin, net]])));
  const { name, kind, basis, numbered } = record;
  return {
    name,
    kind,
    basis,
    numbered,
    nets,
    heightMm: record.height_mm ?? null,
    mouth: record.mouth ? { facesDeg: record.mouth.faces_deg, reachMm: record.mouth.reach_mm ?? null } : null,
    contacts: record.contacts ?? null,
    pads: record.pads.map((pad, i) => padOf(pad, numbered || pad.kind === 'peg' ? pad.pin : pad.pin || unnamed(i))),
  };
}

function padOf(pad: PadRecord, name: string): Pad {
  return {
    ...PLAIN_PAD,
    name,
    kind: pad.kind,
    shape: pad.shape,
    xMm: pad.x_mm,
    yMm: pad.y_mm,
    wMm: pad.w_mm,
    hMm: pad.h_mm,
    turnDeg: pad.turn_deg,
    cornerMm: pad.corner_mm,
    drill: pad.drill ? { wMm: pad.drill.w_mm, hMm: pad.drill.h_mm, dxMm: pad.drill.dx_mm, dyMm: pad.drill.dy_mm } : null,
    rings: pad.rings ?? [],
    side: pad.side,
  };
}

/** How a pattern is kept: what `patternOf` takes. Names are cut to what the log takes. */
export function recordOf(pattern: Pattern): LandPattern {
  const { name, kind, basis, numbered, heightMm, mouth, contacts } = pattern;
  return {
    name: name.trim().slice(0, 200) || 'a part',
    kind,
    basis,
    numbered,
    ...(heightMm === null ? {} : { height_mm: heightMm }),
    ...(mouth === null ? {} : { mouth: { faces_deg: mouth.facesDeg, ...(mouth.reachMm === null ? {} : { reach_mm: mouth.reachMm }) } }),
    ...(contacts === null ? {} : { contacts }),
    pads: pattern.pads.map((pad) => padRecord(pad, pattern.nets[pad.name])),
  };
}

const padRecord = (pad: Pad, net: string | undefined): PadRecord => ({
  pin: pad.name,
  x_mm: pad.xMm,
  y_mm: pad.yMm,
  w_mm: pad.wMm,
  h_mm: pad.hMm,
  kind: pad.kind,
  shape: pad.shape,
  turn_deg: pad.turnDeg,
  corner_mm: pad.cornerMm,
  ...(pad.drill ? { drill: { w_mm: pad.drill.wMm, h_mm: pad.drill.hMm, dx_mm: pad.drill.dxMm, dy_mm: pad.drill.dyMm } } : {}),
  ...(pad.rings.length > 0 ? { rings: pad.rings.map((ring) => ring.map(([x, y]): [number, number] => [x, y])) } : {}),
  side: pad.side,
  ...(net === undefined || net === '' ? {} : { net }),
});
