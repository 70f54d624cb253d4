import type { Part } from '../netlist/types.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { addConductance } from './diodes.ts';
import { EntryList } from './entry-list.ts';

/** Half-width of the change from off to on where the model gives less hysteresis: in V for S, in A for W. */
const MIN_WIDTH_V = 5e-3;
const MIN_WIDTH_A = 1e-5;

interface Switch {
  readonly part: number;
  readonly plus: number;
  readonly minus: number;
  readonly controlPlus: number;
  readonly controlMinus: number;
  readonly threshold: number;
  readonly width: number;
  readonly lnOff: number;
  readonly lnRange: number;
}

/**
 * Switches: ROFF below VT − VH, RON above VT + VH (IT, IH for W); between, the logarithm of the conductance goes smoothly from one to the other
 * (3t² − 2t³), where the notation would remember the last state: an operating point has no past.
 */
export class Switches implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly controlEntries: EntryList;
  private readonly items: Switch[] = [];
  private present = new Uint8Array(0);

  constructor(wiring: Wiring, parts: readonly Part[], currentOf: ReadonlyMap<string, number>) {
    this.entries = new EntryList(wiring);
    this.controlEntries = new EntryList(wiring);
    parts.forEach((part, index) => {
      if (part.kind === 'S' || part.kind === 'W') this.add(wiring, part, index, currentOf);
    });
  }

  private add(wiring: Wiring, part: Part, index: number, currentOf: ReadonlyMap<string, number>): void {
    const { nodes, params: p } = part;
    const [plus, minus] = [wiring.node(nodes[0]!), wiring.node(nodes[1]!)];
    const byCurrent = part.kind === 'W';
    const controlPlus = byCurrent ? currentOf.get(part.control)! : wiring.node(nodes[2]!);
    const controlMinus = byCurrent ? wiring.ground : wiring.node(nodes[3]!);
    const lnOff = -Math.log(p['roff'] ?? 1e12);
    this.items.push({
      part: index,
      plus,
      minus,
      controlPlus,
      controlMinus,
      lnOff,
      threshold: (byCurrent ? p['it'] : p['vt']) ?? 0,
      width: Math.max(Math.abs((byCurrent ? p['ih'] : p['vh']) ?? 0), byCurrent ? MIN_WIDTH_A : MIN_WIDTH_V),
      lnRange: -Math.log(p['ron'] ?? 1) - lnOff,
    });
    this.entries.addPair(plus, minus);
    for (const row of [plus, minus]) for (const col of [controlPlus, controlMinus]) this.controlEntries.add(row, col);
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.controlEntries.bind(places);
    this.present = new Uint8Array(this.items.length);
  }

  prepare({ removed }: Conditions): void {
    this.items.forEach(({ part }, i) => (this.present[i] = removed[part] ? 0 : 1));
  }

  load({ x, values, rhs }: Loading): void {
    for (let i = 0; i < this.items.length; i++) {
      if (!this.present[i]) continue;
      const s = this.items[i]!;
      const control = x[s.controlPlus]! - x[s.controlMinus]!;
      const t = Math.min(Math.max((control - s.threshold) / (2 * s.width) + 0.5, 0), 1);
      const g = Math.exp(s.lnOff + s.lnRange * t * t * (3 - 2 * t));
      addConductance(values, this.entries.places, 4 * i, g);
      const slope = (g * s.lnRange * 6 * t * (1 - t)) / (2 * s.width);
      const across = (x[s.plus]! - x[s.minus]!) * slope;
      addTransfer(values, this.controlEntries.places, 4 * i, across);
      rhs[s.plus]! += across * control;
      rhs[s.minus]! -= across * control;
    }
  }
}

/** Adds the slope of a current from plus to minus with its control, at four places: plus·c+, plus·c−, minus·c+, minus·c−. */
function addTransfer(values: Float64Array, places: Int32Array, at: number, slope: number): void {
  values[places[at]!]! += slope;
  values[places[at + 1]!]! -= slope;
  values[places[at + 2]!]! -= slope;
  values[places[at + 3]!]! += slope;
}
