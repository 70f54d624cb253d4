import type { CircuitFault } from './fault.ts';
import { isInside, neighbours, type LiquidRegion, type Pad } from './placement.ts';
import { BRIDGE_RATE, LIQUID_LEAK_RATE, ohmOf, type OhmOf } from './rates.ts';

/** Bridges of solder: one for each pair of nets with pads closer than `withinMm`, its rate for as many pairs of pads as there are. */
export function bridgeFaults(pads: readonly Pad[], withinMm: number): CircuitFault[] {
  return byNets(neighbours(pads, withinMm), 'bridge', '', BRIDGE_RATE, 'bridgeOhm');
}

/** Leaks under dried liquid: one for each pair of nets with pads inside the region closer than `withinMm`. */
export function liquidFaults(pads: readonly Pad[], region: LiquidRegion, withinMm: number): CircuitFault[] {
  const wet = pads.filter((pad) => isInside(pad, region));
  return byNets(neighbours(wet, withinMm), 'liquid-leak', `${region.id}:`, LIQUID_LEAK_RATE, 'liquidOhm');
}

function byNets(pairs: readonly [Pad, Pad][], kind: 'bridge' | 'liquid-leak', before: string, rate: number, of: OhmOf): CircuitFault[] {
  const faults = new Map<string, CircuitFault>();
  for (const [a, b] of pairs) {
    const nets: [string, string] = a.net < b.net ? [a.net, b.net] : [b.net, a.net];
    const id = `${before}${nets.join('~')}:${kind}`;
    const known = faults.get(id);
    const components = [...new Set([...(known?.components ?? []), a.component.toLowerCase(), b.component.toLowerCase()])];
    faults.set(id, { id, kind, components, nets, rate: (known?.rate ?? 0) + rate, changes: [{ does: 'join', nodes: nets, ...ohmOf(of) }] });
  }
  return [...faults.values()];
}
