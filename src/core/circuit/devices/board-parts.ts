import type { Part } from '../netlist/types.ts';
import { KEEPS_LINE_V, type Bank, type Conditions, type Loading, type Wiring } from './bank.ts';
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
  /** Where its law was last evaluated, what came out, and the slopes there. */
  readonly v: Float64Array;
  readonly out: Float64Array;
  readonly slope: Float64Array;
}

/** Behavioural parts, linearised by the slopes of their laws. */
export class BoardParts implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly items: BoardPart[] = [];
  private present = new Uint8Array(0);
  private scale = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[]) {
    this.entries = new EntryList(wiring);
    let entryCount = 0;
    parts.forEach((part, index) => {
      if (!Object.hasOwn(BOARD_LAWS, part.kind)) return;
      const law = BOARD_LAWS[part.kind as keyof typeof BOARD_LAWS](part.params);
      const unknowns = part.nodes.map((node) => wiring.node(node));
      if (law.ownCurrent) unknowns.push(wiring.extra('current'));
      const n = law.unknowns;
      const [v, out, slope] = [new Float64Array(n), new Float64Array(n), new Float64Array(n * n)];
      this.items.push({ part: index, law, unknowns: Int32Array.from(unknowns), firstEntry: entryCount, v, out, slope });
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
      const { part, v } = this.items[i]!;
      this.present[i] = removed[part] ? 0 : 1;
      const now = scale[part]! * Math.max(sourceShare, LEAST_SHARE);
      if (now === this.scale[i]) continue;
      this.scale[i] = now;
      v[0] = NaN;
    }
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) {
      const item = this.items[i]!;
      if (this.present[i]) this.loadOne(item, this.scale[i]!, into);
      else if (item.law.ownCurrent) into.values[this.entries.places[item.firstEntry + item.law.unknowns ** 2 - 1]!]! += 1;
    }
  }

  private loadOne(item: BoardPart, scale: number, { x, values, rhs }: Loading): void {
    const { unknowns, firstEntry, v, out, slope } = item;
    const { places } = this.entries;
    const n = unknowns.length;
    if (!keepsLine(item, x)) {
      for (let k = 0; k < n; k++) v[k] = x[unknowns[k]!]!;
      item.law.evaluate(v, scale, out, slope);
    }
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

function keepsLine({ unknowns, v }: BoardPart, x: Float64Array): boolean {
  for (let k = 0; k < unknowns.length; k++) if (!(Math.abs(x[unknowns[k]!]! - v[k]!) < KEEPS_LINE_V)) return false;
  return true;
}
