import type { Part } from '../netlist/types.ts';
import type { Component, Role } from './components.ts';
import type { Change, CircuitFault, CircuitFaultKind } from './fault.ts';
import { FAULT_RATES, FAULT_VALUES, ohmOf, spreadOf, type OhmOf } from './rates.ts';

const key = (part: Part): string => part.name.toLowerCase();
const dirty = (part: Part): Change[] => [{ does: 'scale', part: key(part), by: FAULT_VALUES.dirtyFactor, ...spreadOf('dirtyFactor') }];
const remove = (parts: readonly Part[]): Change[] => parts.map((part) => ({ does: 'remove', part: key(part) }));
const scale = (parts: readonly Part[], by: number): Change[] => parts.map((part) => ({ does: 'scale', part: key(part), by }));
const across = (part: Part, of: OhmOf): Change[] => [{ does: 'bridge', part: key(part), ...ohmOf(of) }];
const join = (a: string, b: string, of: OhmOf): Change[] => (a === b ? [] : [{ does: 'join', nodes: [a, b], ...ohmOf(of) }]);

/** Faults of the component itself: its joints and what lies between it and others are elsewhere. */
export function partFaults(component: Component, rate: (kind: CircuitFaultKind) => number | undefined): CircuitFault[] {
  const { ref, role, parts } = component;
  const kinds = Object.keys(FAULT_RATES[role]) as CircuitFaultKind[];
  const faults: CircuitFault[] = [];
  const add = (kind: CircuitFaultKind, suffix: string, changes: readonly Change[], share = 1): void => {
    const chance = rate(kind);
    if (chance === undefined || changes.length === 0) return;
    faults.push({ id: `${ref}${suffix}:${kind}`, kind, components: [ref], nets: [], rate: chance * share, changes });
  };
  for (const kind of kinds) {
    if (kind === 'open-joint') continue;
    if (kind === 'missing') add(kind, '', remove(parts));
    else if (isContact(role)) for (const part of parts) add(kind, suffixOf(part), contactChange(kind, part));
    else if (isString(component)) for (const part of parts) add(kind, suffixOf(part), ownChange(kind, role, [part]));
    else if (kind === 'short' && role === 'transistor')
      for (const [name, changes] of transistorShorts(parts[0]!)) add(kind, name, changes, 0.5);
    else if (kind === 'supply-shorted') for (const [name, changes] of supplyShorts(component)) add(kind, name, changes);
    else add(kind, '', ownChange(kind, role, parts));
  }
  return faults;
}

const isContact = (role: Role): boolean => role === 'contact' || role === 'key';
/** Several like parts in one body, such as lamps in series: each fails by itself. */
const isString = ({ role, parts }: Component): boolean => parts.length > 1 && (role === 'diode' || role === 'resistor');
/** Which contact of a connector it is: `_4` of `RJ1_4`. */
const suffixOf = ({ name }: Part): string => name.toLowerCase().replace(/^[^._]*/, '');

function contactChange(kind: CircuitFaultKind, part: Part): Change[] {
  if (kind === 'dirty-contact') return dirty(part);
  if (kind === 'short') return across(part, 'shortOhm');
  return kind === 'leaky' ? across(part, 'keyLeakOhm') : remove([part]);
}

function ownChange(kind: CircuitFaultKind, role: Role, parts: readonly Part[]): Change[] {
  const [first] = parts;
  const drift = role === 'regulator' ? FAULT_VALUES.setPointDrift : role === 'battery' ? 1 / FAULT_VALUES.flatCell : FAULT_VALUES.drift;
  switch (kind) {
    case 'open':
    case 'dead':
      return remove(parts);
    case 'short':
      return across(first!, 'shortOhm');
    case 'leaky':
      if (role !== 'transistor') return across(first!, role === 'capacitor' || role === 'region' ? 'capacitorLeakOhm' : 'junctionLeakOhm');
      return join(first!.nodes[0]!, first!.nodes[2]!, 'junctionLeakOhm');
    case 'drifted-up':
      return scale(drawing(role, parts), drift);
    case 'drifted-down':
      return scale(drawing(role, parts), 1 / drift);
    case 'reversed':
      return [{ does: 'swap', part: key(first!), pins: role === 'transistor' ? [0, 2] : [0, 1] }];
    default:
      return [];
  }
}

/** Of a chip only what it draws drifts, and of a battery only the cell. */
function drawing(role: Role, parts: readonly Part[]): readonly Part[] {
  const kind = role === 'chip' ? 'LOAD' : role === 'battery' ? 'BATTERY' : undefined;
  return kind ? parts.filter((part) => part.kind === kind) : parts;
}

/** Between the ends of its channel (or collector and emitter), and at its control pin. */
function transistorShorts({ nodes }: Part): [string, Change[]][] {
  return [
    ['', join(nodes[0]!, nodes[2]!, 'shortOhm')],
    ['_control', join(nodes[1]!, nodes[2]!, 'shortOhm')],
  ];
}

/** Input and output of a regulator or a charger to its ground; for a chip what feeds it. */
function supplyShorts({ role, parts }: Component): [string, Change[]][] {
  const ohm = 'supplyShortOhm';
  if (role === 'regulator' || role === 'charger') {
    const [first] = parts;
    return [
      ['_in', join(first!.nodes[0]!, first!.nodes[2]!, ohm)],
      ['_out', join(first!.nodes[1]!, first!.nodes[2]!, ohm)],
    ];
  }
  const loads = parts.filter(({ kind }) => kind === 'LOAD');
  return loads.map((part, i) => [i === 0 ? '' : `_${i + 1}`, across(part, ohm)]);
}
