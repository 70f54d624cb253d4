import { asWritten, type Conditions, type Part, type PowerState } from '../../core/circuit/index.ts';
import type { CircuitSpec } from './circuit-spec.ts';
import type { ModelCircuit } from './model-circuit.ts';
import { elementsByRef, partsNamed } from './part-names.ts';

/** The value that a state may set: Ω of a resistor, A of a load, V of a regulator. 0 for a part that has none. */
export function principalValue({ kind, value, params: p }: Part): number {
  const named: Partial<Record<Part['kind'], number | undefined>> = {
    LOAD: p['i'],
    LINREG: p['vset'],
    BOOST: p['vset'],
    BUCK: p['vset'],
    CHARGER: p['vcv'],
  };
  return named[kind] ?? value;
}

/**
 * A board in one of the states of its model: how its parts stand apart from what feeds it, and what feeds it. Faults go on top of `conditions`; a
 * measurement takes both. A name under `set` is that of a part of the netlist or of a reference, which stands for all its parts.
 */
export function circuitInState(
  { netlist }: Pick<ModelCircuit, 'netlist'>,
  { set, supplies }: Pick<CircuitSpec['states'][number], 'set' | 'supplies'>,
): { conditions: Conditions; power: PowerState } {
  const conditions = asWritten(netlist);
  const byRef = elementsByRef(netlist.parts);
  const indexOf = new Map(netlist.parts.map((part, index) => [part, index]));
  for (const [name, value] of Object.entries(set)) {
    for (const part of partsNamed(name, netlist.parts, byRef)) {
      if (value === 'out') conditions.removed[indexOf.get(part)!] = 1;
      else conditions.scale[indexOf.get(part)!] = value / principalValue(part);
    }
  }
  return { conditions, power: { supplies } };
}
