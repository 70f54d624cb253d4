import { compileCircuit, inPowerState, netCurrents, operatingPoint } from '../../core/circuit/index.ts';
import { circuitInState, type Model } from '../models/index.ts';
import type { NetView } from '../views/index.ts';

const known = new WeakMap<object, readonly NetView[]>();

/**
 * The worst steady current of each net of a good board that a part of it sits on, over the power states of its model, largest first; empty without a
 * circuit. States that the circuit does not settle in are left out. Peaks of converters, capacitors and signals are not in it.
 */
export function netLoads({ circuit, file }: Model): readonly NetView[] {
  if (!circuit || !file.circuit) return [];
  const made = known.get(circuit) ?? worstOf(circuit, file.circuit.states);
  known.set(circuit, made);
  return made;
}

function worstOf(
  { netlist, parts }: NonNullable<Model['circuit']>,
  states: NonNullable<Model['file']['circuit']>['states'],
): readonly NetView[] {
  const worst = new Map<string, NetView>();
  const onBoard = new Set(parts.flatMap(({ nets }) => nets));
  const compiled = compileCircuit(netlist);
  for (const state of states) {
    const { conditions, power } = circuitInState({ netlist }, state);
    const fed = inPowerState(netlist, conditions, power);
    const solved = operatingPoint(compiled, fed);
    if (!solved.ok) continue;
    netCurrents(compiled, fed, solved.x).forEach((currentA, i) => {
      const net = netlist.nodes[i]!;
      if (onBoard.has(net) && currentA > (worst.get(net)?.current_a ?? 0)) worst.set(net, { net, current_a: currentA, state: state.name });
    });
  }
  return [...worst.values()].sort((a, b) => b.current_a - a.current_a);
}
