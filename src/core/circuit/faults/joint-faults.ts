import type { Component } from './components.ts';
import type { CircuitFault } from './fault.ts';
import type { Pad } from './placement.ts';

/**
 * Open joints of components with three nets or more; of one with two nets an open joint is the same as an open part. With pads, one fault a pin that is
 * alone at its net: of two pins at one net either may be open without effect. Without pads, one a net.
 */
export function jointFaults(component: Component, pads: readonly Pad[], rate: number | undefined): CircuitFault[] {
  const { ref, nets, parts } = component;
  if (rate === undefined || nets.length < 3) return [];
  const own = pads.filter((pad) => pad.component.toLowerCase() === ref);
  const names = parts.map(({ name }) => name.toLowerCase());
  return nets.flatMap((net) => {
    const pins = own.filter((pad) => pad.net === net);
    if (own.length > 0 && pins.length !== 1) return [];
    const place = pins[0] ? `.${pins[0].pin.toLowerCase()}` : `@${net}`;
    return [
      {
        id: `${ref}${place}:open-joint`,
        kind: 'open-joint' as const,
        components: [ref],
        nets: [net],
        rate,
        changes: [{ does: 'lift' as const, parts: names, node: net }],
      },
    ];
  });
}
