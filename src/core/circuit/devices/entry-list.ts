import type { Wiring } from './bank.ts';

/** Growing list of handles that becomes places in the matrix once the order is known. Ground's handle is −1; its place is the last one. */
export class EntryList {
  private readonly handles: number[] = [];
  places = new Int32Array(0);

  constructor(private readonly wiring: Wiring) {}

  add(row: number, col: number): void {
    this.handles.push(this.wiring.entry(row, col));
  }

  /** The four entries of a conductance between a and b, in the order aa, bb, ab, ba. */
  addPair(a: number, b: number): void {
    this.add(a, a);
    this.add(b, b);
    this.add(a, b);
    this.add(b, a);
  }

  bind(places: Int32Array): void {
    const ground = places.length - 1;
    const { handles } = this;
    if (this.places.length !== handles.length) this.places = new Int32Array(handles.length);
    for (let i = 0; i < handles.length; i++) this.places[i] = places[handles[i]! < 0 ? ground : handles[i]!]!;
  }
}
