import type { Part } from '../netlist/types.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';

/** Series resistance of a coil at rest, Ω: none, as the notation has it; its wire resistance is a resistor of its own. */
const ENTRIES_PER_BRANCH = 7;

/**
 * Parts with a current of their own among the unknowns: V, L, E, H. Row of the branch: v(plus) − v(minus) − a·(control) − r·i = e.
 * A part taken out turns its row into i = 0.
 */
export class Branches implements Bank {
  readonly bends = false;
  private readonly entries: EntryList;
  private readonly items: { part: number; row: number; gain: number; volt: number }[] = [];
  /** Unknown that holds the current of each voltage source, by lower-case name. */
  readonly currentOf = new Map<string, number>();
  private present = new Float64Array(0);
  private volt = new Float64Array(0);
  private gain = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    for (const part of parts) if (part.kind === 'V') this.currentOf.set(part.name.toLowerCase(), wiring.extra('current'));
    parts.forEach((part, index) => {
      if (part.kind === 'V' || part.kind === 'L' || part.kind === 'E' || part.kind === 'H') this.add(wiring, part, index);
    });
  }

  private add(wiring: Wiring, part: Part, index: number): void {
    const [plus, minus] = [wiring.node(part.nodes[0]!), wiring.node(part.nodes[1]!)];
    const row = this.currentOf.get(part.name.toLowerCase()) ?? wiring.extra('current');
    const controls =
      part.kind === 'E'
        ? [wiring.node(part.nodes[2]!), wiring.node(part.nodes[3]!)]
        : part.kind === 'H'
          ? [this.currentOf.get(part.control)!, wiring.ground]
          : [wiring.ground, wiring.ground];
    this.items.push({
      part: index,
      row,
      gain: part.kind === 'E' || part.kind === 'H' ? part.value : 0,
      volt: part.kind === 'V' ? part.value : 0,
    });
    this.entries.add(plus, row);
    this.entries.add(minus, row);
    this.entries.add(row, plus);
    this.entries.add(row, minus);
    this.entries.add(row, row);
    this.entries.add(row, controls[0]!);
    this.entries.add(row, controls[1]!);
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.present = new Float64Array(this.items.length);
    this.volt = new Float64Array(this.items.length);
    this.gain = new Float64Array(this.items.length);
  }

  prepare({ scale, removed }: Conditions, _x: Float64Array, sourceShare: number): void {
    this.items.forEach((item, i) => {
      this.present[i] = removed[item.part] ? 0 : 1;
      this.volt[i] = this.present[i]! * item.volt * scale[item.part]! * sourceShare;
      this.gain[i] = this.present[i]! * item.gain * scale[item.part]!;
    });
  }

  load({ values, rhs }: Loading): void {
    const { places } = this.entries;
    for (let i = 0; i < this.items.length; i++) {
      const at = ENTRIES_PER_BRANCH * i;
      const one = this.present[i]!;
      values[places[at]!]! += one;
      values[places[at + 1]!]! -= one;
      values[places[at + 2]!]! += one;
      values[places[at + 3]!]! -= one;
      values[places[at + 4]!]! += 1 - one;
      values[places[at + 5]!]! -= this.gain[i]!;
      values[places[at + 6]!]! += this.gain[i]!;
      rhs[this.items[i]!.row]! += this.volt[i]!;
    }
  }
}

/** G and F: a current from plus through the part to minus, in proportion to a voltage or to the current of a voltage source. */
export class ControlledCurrents implements Bank {
  readonly bends = false;
  private readonly entries: EntryList;
  private readonly items: { part: number; gain: number }[] = [];
  private gain = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[], currentOf: ReadonlyMap<string, number>) {
    this.entries = new EntryList(wiring);
    parts.forEach((part, index) => {
      if (part.kind !== 'G' && part.kind !== 'F') return;
      const [plus, minus] = [wiring.node(part.nodes[0]!), wiring.node(part.nodes[1]!)];
      const controls =
        part.kind === 'G' ? [wiring.node(part.nodes[2]!), wiring.node(part.nodes[3]!)] : [currentOf.get(part.control)!, wiring.ground];
      this.items.push({ part: index, gain: part.value });
      for (const row of [plus, minus]) for (const col of controls) this.entries.add(row, col);
    });
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.gain = new Float64Array(this.items.length);
  }

  prepare({ scale, removed }: Conditions): void {
    this.items.forEach((item, i) => (this.gain[i] = removed[item.part] ? 0 : item.gain * scale[item.part]!));
  }

  load({ values }: Loading): void {
    const { places } = this.entries;
    for (let i = 0; i < this.items.length; i++) {
      const g = this.gain[i]!;
      values[places[4 * i]!]! += g;
      values[places[4 * i + 1]!]! -= g;
      values[places[4 * i + 2]!]! -= g;
      values[places[4 * i + 3]!]! += g;
    }
  }
}
