import type { Netlist } from '../netlist/types.ts';
import { componentsOf, type Role } from './components.ts';
import type { CircuitFault, CircuitFaultKind } from './fault.ts';
import { jointFaults } from './joint-faults.ts';
import { bridgeFaults, liquidFaults } from './net-faults.ts';
import { partFaults } from './part-faults.ts';
import type { LiquidRegion, Placement } from './placement.ts';
import { FAULT_RATES } from './rates.ts';

export interface UniverseOptions {
  /** Parts that are not on the board, such as a charger's plug: they have no faults. As the netlist names them, in any case. */
  readonly outside?: readonly string[];
  /** What a component is, where its letters do not tell. */
  readonly roleOf?: (component: string) => Role | undefined;
  /** Block of the model that a component belongs to. */
  readonly blockOf?: (component: string) => string | undefined;
  /** Factor on the rates of a component: liquid, earlier rework, stress. */
  readonly multiplierOf?: (component: string) => number;
  /** Rates that go before the table's, as a bench has learned them. */
  readonly rateOf?: (role: Role, kind: CircuitFaultKind) => number | undefined;
  readonly liquid?: readonly LiquidRegion[];
}

/** Pads of different nets with a smaller gap may be bridged, and under liquid may leak, mm (common practice, no source). */
export const BRIDGE_GAP_MM = 0.5;
export const LEAK_GAP_MM = 1.5;

/**
 * All single faults that are thought of: of each component, of each joint, between neighbouring pads, and under drawn liquid. Without a placement
 * there are no bridges and no leaks. Ids are unique; the order is that of the netlist, then bridges, then leaks.
 */
export function faultUniverse(netlist: Netlist, placement?: Placement, options: UniverseOptions = {}): CircuitFault[] {
  const outside = new Set((options.outside ?? []).map((name) => name.toLowerCase()));
  const onBoard = { ...netlist, parts: netlist.parts.filter(({ name }) => !outside.has(name.toLowerCase())) };
  const pads = placement?.pads.map((pad) => ({ ...pad, net: pad.net.toLowerCase() })) ?? [];
  const faults = componentsOf(onBoard, options.roleOf).flatMap((component) => {
    const factor = options.multiplierOf?.(component.ref) ?? 1;
    const rate = (kind: CircuitFaultKind): number | undefined => {
      const base = options.rateOf?.(component.role, kind) ?? FAULT_RATES[component.role][kind];
      return base === undefined ? undefined : Math.min(base * factor, 1);
    };
    return [...partFaults(component, rate), ...jointFaults(component, pads, rate('open-joint'))];
  });
  faults.push(...bridgeFaults(pads, BRIDGE_GAP_MM));
  for (const region of options.liquid ?? []) faults.push(...liquidFaults(pads, region, LEAK_GAP_MM));
  return faults.map((fault) => withBlock(fault, options.blockOf?.(fault.components[0]!)));
}

const withBlock = (fault: CircuitFault, block: string | undefined): CircuitFault => (block === undefined ? fault : { ...fault, block });
