import { NettingError } from './netting-error.ts';
import type { WrittenPart } from './netlist-text.ts';

/** What hangs on a rail and is not drawn: what it draws, and what it is for an ohmmeter, each with how far that may be off. */
export interface UnknownLoad {
  /** Node of the netlist. */
  readonly rail: string;
  /** Nominal voltage of the rail, V: it draws from six tenths of that on. */
  readonly nominalV: number;
  readonly ampere: number;
  readonly ohm: number;
  /** Standard deviations of the logarithm. */
  readonly spreads: { readonly ampere: number; readonly ohm: number };
}

const AWAKE_AT = 0.6;

/**
 * The parts that stand for an unknown load, `XREST1.XL` and `XREST1.R1` for the first: the circuit takes a component whose reference begins with REST for
 * something of which only what it does to its rail is known. Throws NettingError where a number is not above zero.
 */
export function unknownLoadParts(
  { rail, nominalV, ampere, ohm, spreads }: UnknownLoad,
  place: number,
): readonly [WrittenPart, WrittenPart] {
  if (!(nominalV > 0 && ampere > 0 && ohm > 0)) throw new NettingError('shape', `what hangs on ${rail} draws ${ampere} A and has ${ohm} Ω`);
  const common = { nodes: [rail, '0'], type: '', control: '' };
  const name = `XREST${place}`;
  return [
    { ...common, name: `${name}.XL`, kind: 'LOAD', value: 0, params: { i: ampere, von: AWAKE_AT * nominalV, spread: spreads.ampere } },
    { ...common, name: `${name}.R1`, kind: 'R', value: ohm, params: { spread: spreads.ohm } },
  ];
}
