import { asWritten, type Conditions, type Part } from '../../core/circuit/index.ts';
import type { CircuitSpec } from './circuit-spec.ts';
import type { ModelCircuit } from './model-circuit.ts';
import { elementsByRef } from './part-names.ts';

/** The value that a state may set: V of a source or battery, Ω, A of a load, V of a regulator. 0 for a part that has none. */
export function principalValue({ kind, value, params: p }: Part): number {
  const named = { BATTERY: p['v'], LOAD: p['i'], LINREG: p['vset'], BOOST: p['vset'], BUCK: p['vset'], CHARGER: p['vcv'] }[kind as string];
  return named ?? value;
}

/**
 * How the parts stand in a power state: what its `set` names is scaled to its value or taken out, all else is as written. A name is that
 * of a part of the netlist or of a reference, which stands for all its parts.
 */
export function stateConditions({ netlist, parts }: ModelCircuit, { set }: Pick<CircuitSpec['states'][number], 'set'>): Conditions {
  const conditions = asWritten(netlist);
  const { of } = elementsByRef(netlist.parts, parts);
  const indexOf = new Map(netlist.parts.map((part, index) => [part.name.toLowerCase(), index]));
  for (const [name, value] of Object.entries(set)) {
    const key = name.toLowerCase();
    const meant = of.get(key)?.map((part) => indexOf.get(part.name.toLowerCase())!) ?? (indexOf.has(key) ? [indexOf.get(key)!] : []);
    for (const index of meant) {
      if (value === 'out') conditions.removed[index] = 1;
      else conditions.scale[index] = value / principalValue(netlist.parts[index]!);
    }
  }
  return conditions;
}
