/** What can be wrong with a part, a joint, a contact, or between two nets. */
export type CircuitFaultKind =
  | 'open'
  | 'short'
  | 'leaky'
  | 'drifted-up'
  | 'drifted-down'
  | 'missing'
  | 'reversed'
  | 'dead'
  | 'supply-shorted'
  | 'dirty-contact'
  | 'open-joint'
  | 'bridge'
  | 'liquid-leak';

/**
 * What a fault does to the netlist. The first three leave its wiring as it is; the others are edits of it. Parts are named in lower case. `spread` is the
 * standard deviation of the logarithm of a factor or a resistance from board to board; without it every board has the same.
 */
export type Change =
  | { readonly does: 'scale'; readonly part: string; readonly by: number; readonly spread?: number }
  | { readonly does: 'remove'; readonly part: string }
  /** Resistance across the first two nodes of a part, Ω. */
  | { readonly does: 'bridge'; readonly part: string; readonly ohm: number; readonly spread?: number }
  /** Resistance between two nodes, Ω. */
  | { readonly does: 'join'; readonly nodes: readonly [string, string]; readonly ohm: number; readonly spread?: number }
  /** All that these parts have at a node moves to a new node that nothing else is at. */
  | { readonly does: 'lift'; readonly parts: readonly string[]; readonly node: string }
  /** Two nodes of a part change places, counted from 0. */
  | { readonly does: 'swap'; readonly part: string; readonly pins: readonly [number, number] }
  /** What these parts have at one of two nodes they have at the other: two pins of a chip, or two wires of a connector, are exchanged. */
  | { readonly does: 'exchange'; readonly parts: readonly string[]; readonly nodes: readonly [string, string] };

export interface CircuitFault {
  /** Stable as long as the netlist keeps its names: `r12:open`, `u3@v33:open-joint`, `v33~v18:bridge`. */
  readonly id: string;
  readonly kind: CircuitFaultKind;
  /** Components concerned, as `componentsOf` names them. */
  readonly components: readonly string[];
  /** Nets between which a bridge or a leak lies, or off which a joint is. */
  readonly nets: readonly string[];
  readonly block?: string;
  /** Chance that a unit sold as faulty has it. */
  readonly rate: number;
  readonly changes: readonly Change[];
}
