import { faultUniverse, isInside, isRegion, refOf, type CircuitFault, type CircuitFaultKind } from '../../core/circuit/index.ts';
import { componentRoles, placementOf, type Model } from '../models/index.ts';
import type { BoardFault } from './board-knowledge.ts';
import { netWords } from './part-remedies.ts';

/** Factor on the rates of parts where liquid dried. Common practice, no source. */
const UNDER_LIQUID = 3;

/** Every fault that is thought of on boards of a model with a circuit, the most frequent first. Parts that only feed it from outside have none; where liquid dried, neighbours may leak and parts fail sooner. */
export function boardFaults({ circuit, wet = [] }: Model): BoardFault[] {
  if (!circuit) return [];
  const roles = componentRoles(circuit);
  const blocks = new Map(circuit.parts.map((part) => [part.ref.toLowerCase(), part.block]));
  const written = new Map(circuit.parts.map(({ ref }) => [ref.toLowerCase(), ref]));
  const placement = placementOf(circuit);
  const soaked = new Set(
    placement.pads.filter((pad) => wet.some((region) => isInside(pad, region))).map((pad) => pad.component.toLowerCase()),
  );
  const railOf = (ref: string): string => circuit.netlist.parts.find(({ name }) => refOf(name) === ref)!.nodes[0]!;
  const faults = faultUniverse(circuit.netlist, placement, {
    liquid: wet,
    multiplierOf: (ref) => (soaked.has(ref.toLowerCase()) ? UNDER_LIQUID : 1),
    outside: circuit.netlist.parts.filter(({ kind }) => kind === 'V' || kind === 'I').map(({ name }) => name),
    roleOf: (ref) => roles.get(ref),
    blockOf: (ref) => blocks.get(ref),
  });
  return faults
    .map((fault, order) => ({ fault: boardFault(fault, written, railOf), order }))
    .sort((a, b) => b.fault.rate - a.fault.rate || a.order - b.order)
    .map(({ fault }) => fault);
}

function boardFault(circuit: CircuitFault, written: ReadonlyMap<string, string>, railOf: (ref: string) => string): BoardFault {
  const refs = circuit.components.map((name) => written.get(name.toLowerCase()) ?? name.toUpperCase());
  const region = circuit.components.find(isRegion);
  const name = region === undefined ? nameOf(circuit.kind, refs, circuit.nets) : nameOfRegion(circuit.kind, railOf(region));
  return { id: circuit.id, name, block: circuit.block ?? '', refs, nets: circuit.nets, rate: circuit.rate, circuit };
}

const WORDS: Readonly<Record<Exclude<CircuitFaultKind, 'open-joint' | 'bridge' | 'liquid-leak'>, string>> = {
  open: 'is open',
  short: 'is shorted',
  leaky: 'leaks',
  'drifted-up': 'has drifted to twice its value',
  'drifted-down': 'has drifted to half its value',
  missing: 'is missing',
  reversed: 'sits the wrong way round',
  dead: 'is dead',
  'supply-shorted': 'shorts its supply',
  'dirty-contact': 'has a dirty contact',
};

const nameOfRegion = (kind: CircuitFaultKind, rail: string): string =>
  kind === 'leaky'
    ? `Something that is not drawn leaks from ${netWords(rail)} to ground`
    : `Something that is not drawn shorts ${netWords(rail)}`;

function nameOf(kind: CircuitFaultKind, [ref = '']: readonly string[], nets: readonly string[]): string {
  const [a, b] = nets.map(netWords);
  if (kind === 'open-joint') return `A joint of ${ref} at ${a} is open`;
  if (kind === 'bridge') return `${a} and ${b} are bridged`;
  return kind === 'liquid-leak' ? `Leakage between ${a} and ${b}` : `${ref} ${WORDS[kind]}`;
}
