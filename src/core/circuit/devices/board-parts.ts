import type { Part } from '../netlist/types.ts';
import type { Bank, Conditions, Loading, Wiring } from './bank.ts';
import { BOARD_LAWS } from './board-laws.ts';
import { EntryList } from './entry-list.ts';
import type { BoardLaw } from './laws/board-law.ts';

/** Least share of the set-points while sources are turned up from nothing: a set-point of 0 V has no law. */
const LEAST_SHARE = 1e-3;

interface BoardPart {
  readonly part: number;
  readonly law: BoardLaw;
  /** Unknowns of its nodes, then of its own current where it has one. */
  readonly unknowns: Int32Array;
  readonly firstEntry: number;
}

/** Behavioural parts, linearised by the slopes of their laws. */
export class BoardParts implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly items: BoardPart[] = [];
  private present = new Uint8Array(0);
  private scale = new Float64Array(0);
  private readonly v = new Float64Array(5);
  private readonly out = new Float64Array(5);
  private readonly slope = new Float64Array(25);

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    let entryCount = 0;
    parts.forEach((part, index) => {
      if (!Object.hasOwn(BOARD_LAWS, part.kind)) return;
      const law = BOARD_LAWS[part.kind as keyof typeof BOARD_LAWS](part.params);
      const unknowns = part.nodes.map((node) => wiring.node(node));
      if (law.ownCurrent) unknowns.push(wiring.extra('current'));
      this.items.push({ part: index, law, unknowns: Int32Array.from(unknowns), firstEntry: entryCount });
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
    for (let i = 0; i < this.items.length; i++) {
      const { part } = this.items[i]!;
      this.present[i] = removed[part] ? 0 : 1;
      this.scale[i] = scale[part]! * Math.max(sourceShare, LEAST_SHARE);
    }
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) {
      const item = this.items[i]!;
      if (this.present[i]) this.loadOne(item, this.scale[i]!, into);
      else if (item.law.ownCurrent) into.values[this.entries.places[item.firstEntry + item.law.unknowns ** 2 - 1]!]! += 1;
    }
  }

  private loadOne({ law, unknowns, firstEntry }: BoardPart, scale: number, { x, values, rhs }: Loading): void {
    const { v, out, slope } = this;
    const { places } = this.entries;
    const n = unknowns.length;
    for (let k = 0; k < n; k++) v[k] = x[unknowns[k]!]!;
    law.evaluate(v, scale, out, slope);
    let at = 0;
    for (let row = 0; row < n; row++) {
      let rest = -out[row]!;
      for (let col = 0; col < n; col++, at++) {
        const s = slope[at]!;
        if (s === 0) continue;
        values[places[firstEntry + at]!]! += s;
        rest += s * v[col]!;
      }
      rhs[unknowns[row]!]! += rest;
    }
  }
}
