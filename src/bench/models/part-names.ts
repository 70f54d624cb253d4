import type { Part } from '../../core/circuit/index.ts';

/** The reference, in lower case, that a part of a netlist belongs to: see `modelCircuit`. Undefined when `refs` holds neither form. */
export function refOf(name: string, refs: ReadonlySet<string>): string | undefined {
  const head = name.toLowerCase().split(/[._]/, 1)[0]!;
  return [head, head.slice(1)].find((ref) => refs.has(ref));
}

/** The parts of a netlist by lower-case reference, and those that belong to none. */
export function elementsByRef(
  parts: readonly Part[],
  placed: readonly { readonly ref: string }[],
): { readonly of: ReadonlyMap<string, readonly Part[]>; readonly unplaced: readonly Part[] } {
  const refs = new Set(placed.map(({ ref }) => ref.toLowerCase()));
  const of = new Map<string, Part[]>();
  const unplaced: Part[] = [];
  for (const part of parts) {
    const ref = refOf(part.name, refs);
    if (ref === undefined) unplaced.push(part);
    else of.set(ref, [...(of.get(ref) ?? []), part]);
  }
  return { of, unplaced };
}
