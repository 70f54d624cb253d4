import { padsOf, TEST_POINT, type BoardPad, type Model } from '../../models/index.ts';
import type { LeadView } from '../../views/index.ts';
import { netWords } from '../../boards/part-remedies.ts';

type Circuit = NonNullable<Model['circuit']>;
type Place = { readonly x: number; readonly y: number; readonly side: 'front' | 'back' };

interface NetPad extends BoardPad {
  /** A pad that is there to be measured at. */
  readonly isTest: boolean;
}

const MOST_PADS = 6;
/** A pad that is there to be measured at is worth so many mm of way; a pad on the other side costs more than any way. Common practice, no source. */
const TEST_POINT_MM = 25;
const OTHER_SIDE_MM = 1000;

const known = new WeakMap<Circuit, ReadonlyMap<string, readonly NetPad[]>>();

/** Where a lead can go: pads of a net, test points and large ones near `near` first. */
export function leadOn(circuit: Circuit, net: string, near: Place | null, side: 'front' | 'back'): LeadView {
  const pads = [...(padsByNet(circuit).get(net) ?? [])].sort((a, b) => effort(a, near, side) - effort(b, near, side));
  return {
    net,
    name: netWords(net),
    pads: pads
      .slice(0, MOST_PADS)
      .map((pad) => ({ ref: pad.ref, pin: pad.pin ?? 0, x_mm: round(pad.x), y_mm: round(pad.y), side: pad.side })),
  };
}

/** The handiest pad of a lead as a place. */
export const placeOf = ({ pads: [pad] }: LeadView): Place | null => (pad ? { x: pad.x_mm, y: pad.y_mm, side: pad.side } : null);

function effort(pad: NetPad, near: Place | null, side: 'front' | 'back'): number {
  const way = near ? Math.hypot(pad.x - near.x, pad.y - near.y) : 0;
  const small = 4 / Math.max(Math.min(pad.w, pad.h), 0.1);
  return way + small + (pad.isTest ? 0 : TEST_POINT_MM) + (pad.side === side ? 0 : OTHER_SIDE_MM);
}

function padsByNet(circuit: Circuit): ReadonlyMap<string, readonly NetPad[]> {
  const before = known.get(circuit);
  if (before) return before;
  const nets = new Map<string, NetPad[]>();
  for (const part of circuit.parts) {
    if (part.side === 'off') continue;
    for (const pad of padsOf({ ...part, side: part.side })) {
      if (pad.net === null || pad.pin === null) continue;
      const net = pad.net.toLowerCase();
      nets.set(net, [...(nets.get(net) ?? []), { ...pad, isTest: part.package === TEST_POINT }]);
    }
  }
  known.set(circuit, nets);
  return nets;
}

const round = (mm: number): number => Math.round(mm * 100) / 100;
