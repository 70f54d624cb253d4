import { refOf, type Part } from '../../core/circuit/index.ts';

/** The parts of a netlist by lower-case reference, in its order. */
export function elementsByRef(parts: readonly Part[]): ReadonlyMap<string, readonly Part[]> {
  const of = new Map<string, Part[]>();
  for (const part of parts) {
    const ref = refOf(part.name);
    of.set(ref, [...(of.get(ref) ?? []), part]);
  }
  return of;
}

/** The parts that a name means, in any case: those of a reference, else the one part of that name, else none. */
export function partsNamed(name: string, parts: readonly Part[], byRef = elementsByRef(parts)): readonly Part[] {
  const key = name.toLowerCase();
  return byRef.get(key) ?? parts.filter((part) => part.name.toLowerCase() === key);
}
