import type { Netlist, Part } from '../../core/circuit/index.ts';
import type { CircuitNeed, CircuitSpec } from './circuit-spec.ts';
import { elementsByRef } from './part-names.ts';
import { principalValue } from './power-state.ts';
import { knownHere, problem, type ModelProblem } from './problem.ts';

type Path = readonly (string | number)[];

/** Every node and part that the section `circuit` names and the netlist does not have, and every value that cannot be set. */
export function circuitReferences(spec: CircuitSpec, netlist: Netlist, placed: readonly { readonly ref: string }[]): ModelProblem[] {
  const names = new Names(netlist, placed);
  return [
    ...Object.keys(spec.rails).flatMap((node) => names.node(node, ['rails', node])),
    ...spec.states.flatMap(({ set }, i) =>
      Object.entries(set).flatMap(([part, value]) => names.settable(part, value, ['states', i, 'set', part])),
    ),
    ...Object.entries(spec.points).flatMap(([point, { red, black, through }]) => [
      ...names.node(red, ['points', point, 'red']),
      ...names.node(black, ['points', point, 'black']),
      ...names.carrying(through, ['points', point, 'through']),
    ]),
    ...Object.entries(spec.functions).flatMap(([fn, { needs }]) =>
      needs.flatMap((need, i) => names.need(need, ['functions', fn, 'needs', i])),
    ),
  ].map((found) => ({ ...found, path: ['circuit', ...found.path] }));
}

class Names {
  private readonly nodes: ReadonlySet<string>;
  private readonly parts: ReadonlyMap<string, Part>;
  private readonly byRef: ReadonlyMap<string, readonly Part[]>;

  constructor(
    netlist: Netlist,
    private readonly placed: readonly { readonly ref: string }[],
  ) {
    this.nodes = new Set(['0', ...netlist.nodes]);
    this.parts = new Map(netlist.parts.map((part) => [part.name.toLowerCase(), part]));
    this.byRef = elementsByRef(netlist.parts, placed).of;
  }

  node(name: string | undefined, path: Path): ModelProblem[] {
    if (name === undefined || this.nodes.has(name)) return [];
    return [unknown(`names the node "${name}", which is not in the netlist`, name, this.nodes, path)];
  }

  /** A part of the netlist whose current can be told. */
  carrying(name: string | undefined, path: Path): ModelProblem[] {
    if (name === undefined) return [];
    const part = this.parts.get(name.toLowerCase());
    if (!part) return [unknown(`names the part "${name}", which is not in the netlist`, name, this.partNames(), path)];
    if ('RLV'.includes(part.kind)) return [];
    return [
      problem(
        'model-circuit',
        path,
        `names ${part.name}, which is no resistor, coil or voltage source`,
        'Name one that carries the same current.',
      ),
    ];
  }

  settable(name: string, value: number | 'out', path: Path): ModelProblem[] {
    const parts = this.named(name);
    if (parts.length === 0)
      return [unknown(`names "${name}", which is neither a part of the netlist nor a reference`, name, this.partNames(), path)];
    if (value === 'out') return [];
    if (parts.length > 1)
      return [
        problem(
          'model-circuit',
          path,
          `gives a value to ${parts.length} parts at once`,
          `Name one of them: ${parts.map((part) => part.name).join(', ')}.`,
        ),
      ];
    if (principalValue(parts[0]!) !== 0) return [];
    return [
      problem('model-circuit', path, `gives a value to ${name}, which has none in the netlist, or 0`, 'Give it a value there first.'),
    ];
  }

  need(need: CircuitNeed, path: Path): ModelProblem[] {
    if ('rail' in need) return this.node(need.rail, [...path, 'rail']);
    if ('volts' in need) return [...this.node(need.volts, [...path, 'volts']), ...this.node(need.to, [...path, 'to'])];
    if ('ohms' in need) return [...this.node(need.ohms, [...path, 'ohms']), ...this.node(need.to, [...path, 'to'])];
    if ('amps' in need) return this.carrying(need.amps, [...path, 'amps']);
    if (this.byRef.has(need.part.toLowerCase())) return [];
    const refs = this.placed.map(({ ref }) => ref);
    return [unknown(`names "${need.part}", which is not a reference of the placement`, need.part, refs, [...path, 'part'])];
  }

  private named(name: string): readonly Part[] {
    const part = this.parts.get(name.toLowerCase());
    return this.byRef.get(name.toLowerCase()) ?? (part ? [part] : []);
  }

  private partNames(): string[] {
    return [...this.parts.values()].map(({ name }) => name);
  }
}

const unknown = (message: string, name: string, known: Iterable<string>, path: Path): ModelProblem =>
  problem('model-circuit', path, message, `Correct the name. ${knownHere(name, known)}`);
