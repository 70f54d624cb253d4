import { readNetName } from './net-names.ts';
import { netlistText, type WrittenPart } from './netlist-text.ts';

/** A part whose pins were probed. */
export interface TracedPart {
  readonly ref: string;
  readonly kind: string;
  /** Ω, F or H; null where none is known. */
  readonly value: number | null;
  /** Node of each pin in order; null where it was not probed. */
  readonly nodes: readonly (string | null)[];
}

export interface TracedNetlist {
  readonly text: string;
  /** Parts that are not in it: a pin was not probed, a resistor has no value, or what the part does is not known from its kind. */
  readonly left: readonly { readonly ref: string; readonly why: 'not-probed' | 'no-value' | 'no-law' }[];
}

/** What a part is taken for where nothing better is known, SI. Common practice, no source. */
const USUAL = { farad: 1e-7, wireOhm: 0.3, fuseOhm: 0.05, closedOhm: 0.03, openOhm: 2e7, cellOhm: 0.15 } as const;
/** A plain junction, and one that gives light at about 1.9 V; common practice, no source. */
const JUNCTIONS: Readonly<Record<string, Readonly<Record<string, number>>>> = { diode: { is: 1e-12, n: 1.2 }, light: { is: 1e-18, n: 2 } };
/** A chip with more pins is no regulator. */
const MOST_PINS = 8;
const REGULATOR = { dropout: 0.3, ilimit: 0.4, iq: 1e-4 } as const;
const CONVERTER = { ilimit: 1.5, iq: 1e-4 } as const;

/**
 * A netlist of what was marked and probed: two-legged parts by their kind and value; the battery where its net and ground are named; and a small chip that lies on a
 * supply, on ground and on a net that is called as a voltage is taken for what makes that voltage. Null where nothing is fed: such a netlist would tell of
 * nothing under power. `cellVolt` is the voltage of the battery.
 */
export function tracedNetlist(parts: readonly TracedPart[], cellVolt: number | null): TracedNetlist | null {
  const nodes = new Set(parts.flatMap((part) => part.nodes));
  if (cellVolt === null || !nodes.has('vbat') || !nodes.has('0')) return null;
  const feeders = feedersOf(parts, cellVolt);
  const made = parts.map((part) => ({ ref: part.ref, written: feeders.get(part.ref) ?? twoLegged(part) }));
  const written = made.flatMap((each) => (typeof each.written === 'string' ? [] : [each.written]));
  const left = made.flatMap(({ ref, written: why }) => (typeof why === 'string' ? [{ ref, why }] : []));
  const cell = card('XBT1', 'BATTERY', ['vbat', '0'], 0, { v: cellVolt, r: USUAL.cellOhm });
  return { text: netlistText({ title: 'As traced', parts: [cell, ...written], temperatureK: 300.15 }), left };
}

const card = (
  name: string,
  kind: string,
  nodes: readonly string[],
  value: number,
  params: WrittenPart['params'] = {},
  type = '',
): WrittenPart => ({
  name,
  kind,
  nodes,
  value,
  params,
  type,
  control: '',
});

function twoLegged({ ref, kind, value, nodes }: TracedPart): WrittenPart | TracedNetlist['left'][number]['why'] {
  if (!LAWS.has(kind) || nodes.length > 2) return 'no-law';
  const [first, second] = nodes;
  if (typeof first !== 'string' || typeof second !== 'string') return 'not-probed';
  const resistance = (ohm: number): WrittenPart => card(`R${ref}`, 'R', [first, second], ohm);
  switch (kind) {
    case 'resistor':
      return value === null || !(value > 0) ? 'no-value' : card(ref, 'R', [first, second], value);
    case 'capacitor':
      return card(ref, 'C', [first, second], value ?? USUAL.farad);
    case 'inductor':
      return resistance(USUAL.wireOhm);
    case 'fuse':
      return resistance(USUAL.fuseOhm);
    case 'switch':
      return resistance(/^k/i.test(ref) ? USUAL.openOhm : USUAL.closedOhm);
    default:
      return card(ref, 'D', [second, first], 0, JUNCTIONS[kind]!, 'D');
  }
}

const LAWS: ReadonlySet<string> = new Set(['resistor', 'capacitor', 'inductor', 'fuse', 'switch', 'diode', 'light']);

/** By reference, chips that make a voltage: of those on the same net the one with the fewest pins. */
function feedersOf(parts: readonly TracedPart[], cellVolt: number): ReadonlyMap<string, WrittenPart> {
  const small = parts.filter(({ kind, nodes }) => kind === 'chip' && nodes.length <= MOST_PINS && nodes.includes('0'));
  const feeders = new Map<string, WrittenPart>();
  const fed = new Set<string>();
  for (const { ref, nodes } of small.toSorted((a, b) => a.nodes.length - b.nodes.length)) {
    const found = feeds(nodes, fed, cellVolt);
    if (!found) continue;
    fed.add(found.rail);
    const { rail, volt, from } = found;
    const rises = volt > voltOf(from, cellVolt);
    const params = { vset: volt, ...(rises ? CONVERTER : REGULATOR) };
    feeders.set(ref, card(`X${ref}`, rises ? 'BOOST' : 'LINREG', [from, rail, '0', from], 0, params));
  }
  return feeders;
}

/** The net that a chip on these nets makes, and from which: the lowest named voltage that nothing makes yet, from another supply. */
function feeds(
  nodes: readonly (string | null)[],
  fed: ReadonlySet<string>,
  cellVolt: number,
): { readonly rail: string; readonly volt: number; readonly from: string } | null {
  const supplies = nodes.filter((node): node is string => node !== null && readNetName(node)?.kind === 'supply');
  const rails = supplies.flatMap((rail) => {
    const volt = readNetName(rail)!.volt;
    return volt === null || fed.has(rail) ? [] : [{ rail, volt }];
  });
  const [lowest] = rails.toSorted((a, b) => a.volt - b.volt);
  const from = supplies.find((node) => node !== lowest?.rail && voltOf(node, cellVolt) !== lowest?.volt);
  return lowest && from !== undefined ? { ...lowest, from } : null;
}

/** The voltage that the name of a net tells; the battery has that of its cell, and another supply without a voltage in its name is on the battery. */
const voltOf = (node: string, cellVolt: number): number => readNetName(node)?.volt ?? cellVolt;
