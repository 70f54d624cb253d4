import { CircuitError } from '../circuit-error.ts';
import type { Conditions } from '../devices/bank.ts';
import type { Netlist, Part } from '../netlist/types.ts';

/** How a board is fed and set while it is measured. Parts are named as in the netlist, in any case. */
export interface PowerState {
  /** Supplies that are connected, with their voltage (V), or current (A) for a current source. All others are taken out. */
  readonly supplies: Readonly<Record<string, number>>;
  /** Resistors that stand for switches, keys and plugs: on is a closed contact, off is taken out; the others stay as written. */
  readonly switches?: Readonly<Record<string, 'on' | 'off'>>;
}

/** Nothing connected: how resistance and junctions are measured. */
export const UNPOWERED: PowerState = { supplies: {} };

/** Resistance of a closed contact, Ω (common practice, no source). */
export const CLOSED_CONTACT_OHM = 0.05;

/** Parts that feed a circuit. A voltage source of 0 V is an ammeter of the notation and feeds nothing. */
export const isSupply = ({ kind, value }: Part): boolean => kind === 'BATTERY' || kind === 'I' || (kind === 'V' && value !== 0);

/** The same conditions in a power state. Throws CircuitError for a name that is no supply or no switch of the netlist. */
export function inPowerState(netlist: Netlist, conditions: Conditions, state: PowerState): Conditions {
  const scale = conditions.scale.slice();
  const removed = conditions.removed.slice();
  const index = new Map(netlist.parts.map((part, i) => [part.name.toLowerCase(), i]));
  const find = (name: string): number => {
    const at = index.get(name.toLowerCase());
    if (at === undefined) throw new CircuitError('unknown-name', `the netlist has no part "${name}"`);
    return at;
  };
  const given = new Map(Object.entries(state.supplies).map(([name, value]) => [find(name), value]));
  netlist.parts.forEach((part, i) => {
    if (isSupply(part) && !given.has(i)) removed[i] = 1;
  });
  for (const [i, value] of given) scale[i]! *= value / writtenSupply(netlist.parts[i]!);
  for (const [name, position] of Object.entries(state.switches ?? {})) {
    const i = find(name);
    if (position === 'off') removed[i] = 1;
    else scale[i]! *= CLOSED_CONTACT_OHM / contactOhm(netlist.parts[i]!);
  }
  return { scale, removed, bridge: conditions.bridge };
}

function writtenSupply(part: Part): number {
  if (!isSupply(part)) throw new CircuitError('unknown-name', `${part.name} is not a supply: it is not a V, I or BATTERY with a value`);
  return part.kind === 'BATTERY' ? part.params['v']! : part.value;
}

function contactOhm(part: Part): number {
  if (part.kind !== 'R') throw new CircuitError('unknown-name', `${part.name} is not a resistor, so it cannot stand for a switch`);
  return part.value;
}
