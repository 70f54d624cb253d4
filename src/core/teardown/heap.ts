/** A queue that hands out the entry that comes first by `before`; entries may compare equal. */
export class Heap<T> {
  private readonly entries: T[] = [];
  private readonly before: (a: T, b: T) => boolean;

  constructor(before: (a: T, b: T) => boolean) {
    this.before = before;
  }

  get size(): number {
    return this.entries.length;
  }

  push(entry: T): void {
    const { entries } = this;
    let at = entries.push(entry) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!this.before(entry, entries[above]!)) break;
      entries[at] = entries[above]!;
      at = above;
    }
    entries[at] = entry;
  }

  pop(): T | undefined {
    const { entries } = this;
    const first = entries[0];
    const last = entries.pop();
    if (last !== undefined && entries.length > 0) this.sink(last);
    return first;
  }

  private sink(entry: T): void {
    const { entries } = this;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= entries.length) break;
      if (below + 1 < entries.length && this.before(entries[below + 1]!, entries[below]!)) below++;
      if (!this.before(entries[below]!, entry)) break;
      entries[at] = entries[below]!;
      at = below;
    }
    entries[at] = entry;
  }
}
