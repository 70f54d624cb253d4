import type { Part } from '../netlist/types.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';

/** Current sources, and batteries as a current source with its inner conductance (Norton): I = v / r, G = 1 / r. */
export class CurrentSources implements Bank {
  readonly bends = false;
  private readonly entries: EntryList;
  private readonly items: { part: number; plus: number; minus: number; ampere: number; siemens: number }[] = [];
  private current = new Float64Array(0);
  private siemens = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    parts.forEach((part, index) => {
      if (part.kind !== 'I' && part.kind !== 'BATTERY') return;
      const [plus, minus] = [wiring.node(part.nodes[0]!), wiring.node(part.nodes[1]!)];
      const siemens = part.kind === 'BATTERY' ? 1 / part.params['r']! : 0;
      // A current source drives its current from plus through itself to minus; a battery drives out of plus.
      const ampere = part.kind === 'BATTERY' ? -part.params['v']! * siemens : part.value;
      this.items.push({ part: index, plus, minus, ampere, siemens });
      this.entries.addPair(plus, minus);
    });
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.current = new Float64Array(this.items.length);
    this.siemens = new Float64Array(this.items.length);
  }

  prepare({ scale, removed }: Conditions, _x: Float64Array, sourceShare: number): void {
    this.items.forEach((item, i) => {
      const present = removed[item.part] ? 0 : 1;
      this.current[i] = present * item.ampere * scale[item.part]! * sourceShare;
      this.siemens[i] = present * item.siemens;
    });
  }

  load({ values, rhs }: Loading): void {
    const { places } = this.entries;
    for (let i = 0; i < this.items.length; i++) {
      const { plus, minus } = this.items[i]!;
      const g = this.siemens[i]!;
      rhs[plus]! -= this.current[i]!;
      rhs[minus]! += this.current[i]!;
      values[places[4 * i]!]! += g;
      values[places[4 * i + 1]!]! += g;
      values[places[4 * i + 2]!]! -= g;
      values[places[4 * i + 3]!]! -= g;
    }
  }
}
