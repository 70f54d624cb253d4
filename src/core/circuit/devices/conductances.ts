import type { Part } from '../netlist/types.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';

/**
 * Resistors, and for every part with two nodes or more the conductance across its first two that a short or a leak brings.
 * Capacitors are only that: at rest they carry no current of their own.
 */
export class Conductances implements Bank {
  readonly bends = false;
  private readonly part: number[] = [];
  private readonly own: number[] = [];
  private readonly entries: EntryList;
  private siemens = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    parts.forEach((part, index) => {
      this.part.push(index);
      this.own.push(part.kind === 'R' ? 1 / part.value : 0);
      this.entries.addPair(wiring.node(part.nodes[0]!), wiring.node(part.nodes[1]!));
    });
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.siemens = new Float64Array(this.part.length);
  }

  prepare({ scale, removed, bridge }: Conditions): void {
    for (let i = 0; i < this.siemens.length; i++) {
      const part = this.part[i]!;
      this.siemens[i] = (removed[part] ? 0 : this.own[i]! / scale[part]!) + bridge[part]!;
    }
  }

  load({ values }: Loading): void {
    const { siemens } = this;
    const { places } = this.entries;
    for (let i = 0; i < siemens.length; i++) {
      const g = siemens[i]!;
      if (g === 0) continue;
      values[places[4 * i]!]! += g;
      values[places[4 * i + 1]!]! += g;
      values[places[4 * i + 2]!]! -= g;
      values[places[4 * i + 3]!]! -= g;
    }
  }
}
