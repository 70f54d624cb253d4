import type { Part } from '../netlist/types.ts';
import { addConductance } from './diodes.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';

/**
 * Resistors, and for every part with two nodes or more the conductance across its first two that a short or a leak brings.
 * Capacitors are only that: at rest they carry no current of their own.
 */
export class Conductances implements Bank {
  readonly bends = false;
  private readonly resistors: Int32Array;
  private readonly own: Float64Array;
  private readonly entries: EntryList;
  private readonly siemens: Float64Array;

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    for (const { nodes } of parts) this.entries.addPair(wiring.node(nodes[0]!), wiring.node(nodes[1]!));
    const resistors = [...parts.keys()].filter((i) => parts[i]!.kind === 'R');
    this.resistors = Int32Array.from(resistors);
    this.own = Float64Array.from(resistors, (i) => 1 / parts[i]!.value);
    this.siemens = new Float64Array(parts.length);
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
  }

  prepare({ scale, removed, bridge }: Conditions): void {
    const { siemens, resistors, own } = this;
    siemens.set(bridge);
    for (let i = 0; i < resistors.length; i++) {
      const part = resistors[i]!;
      if (!removed[part]) siemens[part]! += own[i]! / scale[part]!;
    }
  }

  load({ values }: Loading): void {
    const { siemens } = this;
    const { places } = this.entries;
    for (let i = 0; i < siemens.length; i++) if (siemens[i] !== 0) addConductance(values, places, 4 * i, siemens[i]!);
  }
}
