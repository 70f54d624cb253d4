import type { Part } from '../netlist/types.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { BOARD_LAWS, type BoardLaw } from './board-laws.ts';
import { EntryList } from './entry-list.ts';

/** Step of the difference quotients, V or A: small beside the rounding of the laws, large beside the noise of the last digits. */
const STEP = 1e-6;

interface BoardPart {
  readonly part: number;
  readonly law: BoardLaw;
  readonly params: Readonly<Record<string, number>>;
  /** Unknowns of its nodes, then of its own current where it has one. */
  readonly unknowns: readonly number[];
  readonly ownCurrent: boolean;
  readonly firstEntry: number;
}

/** Behavioural parts, linearised by difference quotients of their laws: the answer does not depend on them, only the way to it. */
export class BoardParts implements Bank {
  private readonly entries: EntryList;
  private readonly items: BoardPart[] = [];
  private present = new Uint8Array(0);
  private scale = new Float64Array(0);
  private readonly v = new Float64Array(6);
  private readonly out = new Float64Array(6);
  private readonly moved = new Float64Array(6);

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    let entryCount = 0;
    parts.forEach((part, index) => {
      if (!Object.hasOwn(BOARD_LAWS, part.kind)) return;
      const { law, ownCurrent } = BOARD_LAWS[part.kind as keyof typeof BOARD_LAWS];
      const unknowns = part.nodes.map((node) => wiring.node(node));
      if (ownCurrent) unknowns.push(wiring.extra('current'));
      this.items.push({ part: index, law, params: part.params, unknowns, ownCurrent, firstEntry: entryCount });
      for (const row of unknowns) for (const col of unknowns) this.entries.add(row, col);
      entryCount += unknowns.length ** 2;
    });
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.present = new Uint8Array(this.items.length);
    this.scale = new Float64Array(this.items.length);
  }

  prepare({ scale, removed }: Conditions, _x: Float64Array, sourceShare: number): void {
    this.items.forEach(({ part }, i) => {
      this.present[i] = removed[part] ? 0 : 1;
      this.scale[i] = scale[part]! * Math.max(sourceShare, 1e-3);
    });
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) {
      const item = this.items[i]!;
      if (this.present[i]) this.loadOne(item, this.scale[i]!, into);
      else if (item.ownCurrent) into.values[this.entries.places[item.firstEntry + item.unknowns.length ** 2 - 1]!]! += 1;
    }
  }

  private loadOne({ law, params, unknowns, firstEntry }: BoardPart, scale: number, { x, values, rhs }: Loading): void {
    const { v, out, moved } = this;
    const { places } = this.entries;
    const n = unknowns.length;
    for (let k = 0; k < n; k++) v[k] = x[unknowns[k]!]!;
    law(v, params, scale, out);
    for (let row = 0; row < n; row++) rhs[unknowns[row]!]! -= out[row]!;
    for (let col = 0; col < n; col++) {
      const at = v[col]!;
      v[col] = at + STEP;
      law(v, params, scale, moved);
      v[col] = at;
      for (let row = 0; row < n; row++) {
        const slope = (moved[row]! - out[row]!) / STEP;
        values[places[firstEntry + row * n + col]!]! += slope;
        rhs[unknowns[row]!]! += slope * at;
      }
    }
  }
}
