import { isSupply, type Netlist, type Part } from '../../core/circuit/index.ts';
import { principalValue } from './circuit-in-state.ts';
import type { CircuitNeed, CircuitSpec } from './circuit-spec.ts';
import { elementsByRef, partsNamed } from './part-names.ts';
import { knownHere, problem, type ModelProblem } from './problem.ts';

type Path = readonly (string | number)[];

/** Every node and part that the section `circuit` names and the netlist does not have, and every value that cannot be set. */
export function circuitReferences(spec: CircuitSpec, netlist: Netlist): ModelProblem[] {
  const names = new Names(netlist);
  const needs = Object.entries(spec.functions).flatMap(([fn, each]) =>
    each.needs.map((need, i) => ({ need, path: ['functions', fn, 'needs', i] })),
  );
  return [
    ...Object.keys(spec.rails).flatMap((node) => names.node(node, ['rails', node])),
    ...spec.states.flatMap((state, i) => names.inState(state, ['states', i])),
    ...Object.entries(spec.points).flatMap(([point, { red, black, supply }]) => [
      ...names.node(red, ['points', point, 'red']),
      ...names.node(black, ['points', point, 'black']),
      ...names.supply(supply, ['points', point, 'supply']),
    ]),
    ...needs.flatMap(({ need, path }) =>
      'rail' in need && !Object.hasOwn(spec.rails, need.rail) ? noRail(need.rail, spec, path) : names.need(need, path),
    ),
  ].map((found) => ({ ...found, path: ['circuit', ...found.path] }));
}

const noRail = (rail: string, { rails }: CircuitSpec, path: Path): ModelProblem[] => [
  unknown(`names the rail "${rail}", which is not in rails`, rail, Object.keys(rails), [...path, 'rail']),
];

/** What the netlist has. */
class Names {
  private readonly nodes: ReadonlySet<string>;
  private readonly byRef: ReadonlyMap<string, readonly Part[]>;

  constructor(private readonly netlist: Netlist) {
    this.nodes = new Set(['0', ...netlist.nodes]);
    this.byRef = elementsByRef(netlist.parts);
  }

  node(name: string | undefined, path: Path): ModelProblem[] {
    if (name === undefined || this.nodes.has(name)) return [];
    return [unknown(`names the node "${name}", which is not in the netlist`, name, this.nodes, path)];
  }

  supply(name: string | undefined, path: Path): ModelProblem[] {
    const supplies = this.netlist.parts.filter(isSupply).map((part) => part.name);
    if (name === undefined || supplies.some((supply) => supply.toLowerCase() === name.toLowerCase())) return [];
    return [unknown(`names "${name}", which is not a supply of the netlist (V, I or BATTERY)`, name, supplies, path)];
  }

  inState({ set, supplies }: CircuitSpec['states'][number], path: Path): ModelProblem[] {
    return [
      ...Object.keys(supplies).flatMap((name) => this.supply(name, [...path, 'supplies', name])),
      ...Object.entries(set).flatMap(([name, value]) => this.settable(name, value, [...path, 'set', name])),
    ];
  }

  private settable(name: string, value: number | 'out', path: Path): ModelProblem[] {
    const parts = partsNamed(name, this.netlist.parts, this.byRef);
    const [first, ...others] = parts;
    if (!first) {
      const known = this.netlist.parts.map((part) => part.name);
      return [unknown(`names "${name}", which is neither a part of the netlist nor a reference`, name, known, path)];
    }
    if (value === 'out') return [];
    const refuse = (message: string, next: string): ModelProblem[] => [problem('model-circuit', path, message, next)];
    if (others.length > 0)
      return refuse(`gives a value to ${parts.length} parts at once`, `Name one of them: ${parts.map((part) => part.name).join(', ')}.`);
    if (isSupply(first)) return refuse('gives a value to a supply', 'Write its voltage under `supplies` of the state.');
    return principalValue(first) > 0
      ? []
      : refuse(`gives a value to ${name}, which has none in the netlist`, 'Give a value to a resistor, a load or a regulator.');
  }

  need(need: CircuitNeed, path: Path): ModelProblem[] {
    if ('rail' in need) return this.node(need.rail, [...path, 'rail']);
    if ('volts' in need) return [...this.node(need.volts, [...path, 'volts']), ...this.node(need.to, [...path, 'to'])];
    if ('ohms' in need) return [...this.node(need.ohms, [...path, 'ohms']), ...this.node(need.to, [...path, 'to'])];
    if ('amps' in need) return this.supply(need.amps, [...path, 'amps']);
    if (this.byRef.has(need.part.toLowerCase())) return [];
    return [unknown(`names "${need.part}", which is not a reference of the netlist`, need.part, this.byRef.keys(), [...path, 'part'])];
  }
}

const unknown = (message: string, name: string, known: Iterable<string>, path: Path): ModelProblem =>
  problem('model-circuit', path, message, `Correct the name. ${knownHere(name, known)}`);
