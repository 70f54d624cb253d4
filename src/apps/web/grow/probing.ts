import { netsOf, type Contradiction, type Nets, type PinNamed, type PinsJoined } from '../../../core/netting/index.ts';
import type { DrawnPart, Hit } from '../board/drawn-part.ts';
import { pinName } from './editor-part.ts';

/** What was measured and named so far. */
export interface Found {
  readonly joins: readonly PinsJoined[];
  readonly names: readonly PinNamed[];
}

/** The leads: one is held on a pin, and the meter beeps or not at the next one that is tapped. */
export interface Leads {
  readonly held: string | null;
  readonly beeps: boolean;
}

/** What a tap on a pin says. */
export type Said =
  | { readonly what: 'held'; readonly leads: Leads }
  | { readonly what: 'measured'; readonly join: PinsJoined; readonly against: readonly Contradiction[] };

/** The pin that was pointed at; that of the part where it has only one. */
export function pinAt(hit: Hit | null): string | null {
  if (!hit) return null;
  const pins = hit.part.pads.flatMap(({ pin }) => (pin === null ? [] : [pin]));
  const pin = hit.pin ?? (pins.length === 1 ? pins[0]! : null);
  return pin === null ? null : pinName(hit.part.ref, pin);
}

/**
 * A tap on a pin: the first holds a lead there, the same one lifts it, and any other is a measurement between the two. `against` is what cannot be true
 * at once any more after it: the person is asked before it is recorded.
 */
export function probed(leads: Leads, pin: string, found: Found): Said {
  if (leads.held === null) return { what: 'held', leads: { ...leads, held: pin } };
  if (leads.held === pin) return { what: 'held', leads: { ...leads, held: null } };
  const join = { pins: [leads.held, pin], joined: leads.beeps };
  return { what: 'measured', join, against: newAgainst(found, { ...found, joins: [...found.joins, join] }) };
}

/** What contradicts itself with more known and did not before. */
export function newAgainst(before: Found, after: Found): Contradiction[] {
  const known = new Set(netsOf(before.joins, before.names).contradictions.map(keyOf));
  return netsOf(after.joins, after.names).contradictions.filter((each) => !known.has(keyOf(each)));
}

const keyOf = (each: Contradiction): string => `${each.code} ${each.pins.toSorted().join(' ')}`;

/** A contradiction as a sentence that ends with what to do. */
export function contradictionWords(each: Contradiction): string {
  const [a, b] = each.pins;
  const way = each.through.length === 1 ? 'one measurement' : `a chain of ${each.through.length} measurements`;
  if (each.code === 'measured-apart')
    return `${a} and ${b} were measured as not joined, but ${way} joins them. Measure between ${a} and ${b} once more.`;
  const [one, other] = each.names;
  if (each.code === 'supplies-joined')
    return `This makes one net of two supplies, ${netWordsOf(one)} at ${a} and ${netWordsOf(other)} at ${b}, by ${way}. On a good board they are apart: check where both leads are, and for a solder bridge.`;
  return `One net has two names, ${one} at ${a} and ${other} at ${b}, by ${way}. Name it anew, or measure between the two.`;
}

export const netWordsOf = (node: string): string => (node === '0' ? 'ground' : node);

/** Colours and dashes by which nets are told apart; with the name, three ways. */
export const NET_LOOKS = 12;

/** A net of two pins or more, as it is shown and listed. */
export interface ShownNet {
  readonly node: string;
  readonly name: string;
  readonly isNamed: boolean;
  readonly pins: readonly string[];
  readonly look: number;
}

/** Nets in the order in which they are listed: named ones first, then the larger ones. Lone pins are none. */
export function shownNets({ nets }: Nets): ShownNet[] {
  return nets
    .filter(({ pins, isNamed }) => pins.length > 1 || isNamed)
    .toSorted((a, b) => Number(b.isNamed) - Number(a.isNamed) || b.pins.length - a.pins.length)
    .map(({ node, isNamed, pins }, i) => ({ node, name: netWordsOf(node), isNamed, pins, look: i % NET_LOOKS }));
}

/** The pin of a text such as "u1.3" where there is such a pin on the board. */
export function pinNamed(text: string, parts: readonly DrawnPart[]): string | null {
  const [ref, pin] = text.trim().toUpperCase().split('.');
  const part = parts.find((each) => each.ref.toUpperCase() === ref);
  const found = part?.pads.find((pad) => pad.pin !== null && String(pad.pin) === pin);
  return part && found ? pinName(part.ref, found.pin!) : null;
}
