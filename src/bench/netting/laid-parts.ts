import { parseEngineering, type Component } from '../../core/circuit/index.ts';
import type { DrawnPart, LaidPart } from '../../core/netting/index.ts';
import type { GrownPart } from '../grow/grown-model.ts';
import { packageNamed } from '../models/index.ts';

/** Kinds whose value is a number of Ω, F or H. */
const WITH_VALUE: ReadonlySet<string> = new Set(['resistor', 'capacitor', 'inductor']);

/** Node of each pin of a marked part in order, of its own pins or those of its package; null where nothing was measured. */
export function nodesOfPins({ ref, pins, package: name }: GrownPart, nodeOf: ReadonlyMap<string, string>): (string | null)[] {
  const pads = packageNamed(name)?.pads.flatMap(({ pin }) => pin ?? []) ?? [];
  const count = pins.length > 0 ? pins.length : Math.max(0, ...pads);
  return Array.from({ length: count }, (_, i) => nodeOf.get(`${ref}.${i + 1}`) ?? null);
}

/** A marked part as it is held against netlist and placement; `nodeOf` has the nets that were measured and named, by pin. */
export function markedPart(part: GrownPart, nodeOf: ReadonlyMap<string, string>): LaidPart {
  const { ref, side, x_mm, y_mm, kind, value } = part;
  const nodes = nodesOfPins(part, nodeOf);
  const number = WITH_VALUE.has(kind) ? (parseEngineering(value.replace(/\s/g, '')) ?? null) : null;
  return { ref, side, xMm: x_mm, yMm: y_mm, value: number, nodes, isBare: kind === 'test-point' || kind === 'hole' };
}

/** A component of a netlist as it is held against what is placed and marked. */
export function drawnPart({ ref, parts, nets }: Component): DrawnPart {
  const [first] = parts;
  const isOne = parts.length === 1 && first !== undefined && first.kind.length === 1;
  return { ref: ref.toUpperCase(), letter: isOne ? first.kind : '', value: isOne && first.value > 0 ? first.value : null, nodes: nets };
}
