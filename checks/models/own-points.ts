/** Points of a model of one's own of the Corrie CP-4, and what they are called in the one that ships. `id` is what the page makes of the name. */
export const OWN_POINTS = [
  { id: 'behind-the-switch', of: 'VSW', name: 'Behind the switch', block: 'switch' },
  { id: 'at-the-motor', of: 'VMOT', name: 'At the motor', block: 'converter' },
  { id: 'before-the-phones', of: 'AMP-L', name: 'Before the phones', block: 'sound' },
] as const;

export const POINT_OF: Readonly<Record<string, string>> = {
  'BATTERY-V': 'VBAT',
  ...Object.fromEntries(OWN_POINTS.map(({ id, of }) => [id, of])),
};
