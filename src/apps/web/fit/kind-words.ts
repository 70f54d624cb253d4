import type { PadKind, PartKind } from '../../../core/fit/index.ts';

/** Kinds of part as one says them. */
export const KIND_NAMES: readonly { readonly id: PartKind; readonly name: string }[] = [
  { id: 'other', name: 'Something else' },
  { id: 'connector', name: 'Connector' },
  { id: 'ribbon-socket', name: 'Socket for a ribbon' },
  { id: 'gull-wing', name: 'Chip with feet bent outwards' },
  { id: 'j-lead', name: 'Chip with feet bent under it' },
  { id: 'no-lead', name: 'Chip without feet, pads under it' },
  { id: 'chip', name: 'Two ends (resistor, capacitor)' },
  { id: 'legs', name: 'Legs through the board' },
  { id: 'wire-legs', name: 'Wires that bend freely' },
];

export const PAD_KINDS: readonly { readonly id: PadKind; readonly name: string }[] = [
  { id: 'surface', name: 'Pad on the surface' },
  { id: 'through', name: 'Pad with a hole for a leg' },
  { id: 'peg', name: 'Bare hole for a peg' },
];

export const CONTACT_SIDES = [
  { id: '', name: 'not known' },
  { id: 'top', name: 'Top' },
  { id: 'bottom', name: 'Bottom' },
  { id: 'both', name: 'Both' },
] as const;

/** Ways of a mouth as pads are drawn, by degrees against the clock. */
export const WAYS = [
  { id: '', name: 'not known' },
  { id: '0', name: 'To the right' },
  { id: '90', name: 'Up' },
  { id: '180', name: 'To the left' },
  { id: '270', name: 'Down' },
] as const;

/** "0.50 mm". */
export const mm = (value: number): string => `${value.toFixed(2)} mm`;
