import { isSupply, type Netlist } from '../../core/circuit/index.ts';
import type { CircuitNeed, CircuitSpec } from '../models/index.ts';
import { elementsByRef } from '../models/part-names.ts';

/** What of the section `circuit` a netlist has: points, states and needs that name something else are left out, and functions of which no need is left. */
export function keptSpec(spec: CircuitSpec, netlist: Netlist): CircuitSpec {
  const has = new Named(netlist);
  const functions = Object.entries(spec.functions).flatMap(([id, { state, needs }]) => {
    const kept = needs.filter((need) => has.need(need));
    return kept.length > 0 ? [[id, { state, needs: kept }] as const] : [];
  });
  return {
    ...spec,
    rails: Object.fromEntries(Object.entries(spec.rails).filter(([node]) => has.node(node))),
    states: spec.states.map((state) => ({
      ...state,
      supplies: Object.fromEntries(Object.entries(state.supplies).filter(([name]) => has.supply(name))),
      set: Object.fromEntries(Object.entries(state.set).filter(([name]) => has.part(name))),
    })),
    points: Object.fromEntries(
      Object.entries(spec.points).filter(([, { red, black, supply }]) => has.node(red) && has.node(black) && has.supply(supply)),
    ),
    functions: Object.fromEntries(functions),
  };
}

/** What a netlist has; what is not named is there. */
class Named {
  private readonly nodes: ReadonlySet<string>;
  private readonly names: ReadonlySet<string>;
  private readonly supplies: ReadonlySet<string>;
  private readonly refs: ReadonlySet<string>;

  constructor({ nodes, parts }: Netlist) {
    this.nodes = new Set(['0', ...nodes]);
    this.names = new Set(parts.map(({ name }) => name.toLowerCase()));
    this.supplies = new Set(parts.filter(isSupply).map(({ name }) => name.toLowerCase()));
    this.refs = new Set(elementsByRef(parts).keys());
  }

  node = (node: string | undefined): boolean => node === undefined || this.nodes.has(node);
  supply = (name: string | undefined): boolean => name === undefined || this.supplies.has(name.toLowerCase());
  part = (name: string): boolean => this.refs.has(name.toLowerCase()) || this.names.has(name.toLowerCase());

  need(need: CircuitNeed): boolean {
    if ('rail' in need) return this.node(need.rail);
    if ('volts' in need) return this.node(need.volts) && this.node(need.to);
    if ('ohms' in need) return this.node(need.ohms) && this.node(need.to);
    return 'amps' in need ? this.supply(need.amps) : this.refs.has(need.part.toLowerCase());
  }
}
