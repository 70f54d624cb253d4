import type { Netlist, Part } from '../../core/circuit/index.ts';
import { nearest } from '../rules/nearest.ts';
import { packageNamed } from './packages.ts';
import type { PlacementRow } from './placement-csv.ts';

/** Which node of the notation each pin is: of a diode pin 1 is the cathode; of transistors 1, 2, 3 are base, emitter, collector or gate, source, drain. */
const PIN_ORDER: Readonly<Record<string, readonly number[]>> = { R: [0, 1], C: [0, 1], L: [0, 1], D: [1, 0], Q: [1, 2, 0], M: [1, 2, 0] };

/** A package that joins a net without being a part: a place to put the probe. */
export const TEST_POINT = 'TP';

type Bad = { readonly field: string; readonly message: string; readonly next: string };
export type PinNets = { readonly ok: true; readonly nets: readonly (string | null)[] } | { readonly ok: false; readonly bad: Bad };

/**
 * The net of each pin of a placed part: as its line says, or, for a part that is one resistor, capacitor, coil, diode or transistor of the
 * netlist, from there. What is off the board has none.
 */
export function netsOfPins(row: Omit<PlacementRow, 'line'>, elements: readonly Part[], netlist: Netlist): PinNets {
  if (elements.length === 0 && row.package !== TEST_POINT)
    return refuse('ref', `"${row.ref}" has no part in the netlist`, 'Add it there, or take the line out.');
  if (row.side === 'off') return { ok: true, nets: [] };
  if (row.nets.length === 0) return fromNetlist(row, elements);
  const known = new Set(row.package === TEST_POINT ? ['0', ...netlist.nodes] : elements.flatMap(({ nodes }) => nodes));
  const strange = row.nets.find((net) => net !== null && !known.has(net));
  if (strange === undefined || strange === null) return { ok: true, nets: row.nets };
  const whose = row.package === TEST_POINT ? 'the netlist' : `the parts of ${row.ref} in the netlist`;
  return refuse('nets', `names "${strange}", which is not a node of ${whose}`, `Known there: ${nearest(strange, known)}.`);
}

function fromNetlist(row: Omit<PlacementRow, 'line'>, elements: readonly Part[]): PinNets {
  const [part, ...others] = elements;
  const order = part && others.length === 0 ? PIN_ORDER[part.kind] : undefined;
  if (!part || !order)
    return refuse('nets', 'is empty, but the netlist does not say which pin is which', 'Write the node of each pin, in the order of pins.');
  const pins = Math.max(...packageNamed(row.package)!.pads.map(({ pin }) => pin ?? 0));
  if (pins === order.length) return { ok: true, nets: order.map((node) => part.nodes[node]!) };
  const message = `has ${pins} pins, but ${part.name} has ${order.length}`;
  return refuse('package', message, 'Choose another package, or write the node of each pin under Nets.');
}

const refuse = (field: string, message: string, next: string): PinNets => ({ ok: false, bad: { field, message, next } });
