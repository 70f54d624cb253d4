import type { Caution } from '../../../bench/models/index.ts';

/** The dangers in a word each, where their whole sentences stand beside. */
export const CAUTION_NAMES: Readonly<Record<Caution, string>> = {
  'lithium-cell': 'cell',
  mains: 'mains',
  'high-voltage': 'high voltage',
  'hot-tool': 'hot',
  fumes: 'fumes',
  solvent: 'solvent',
  esd: 'static',
  sharp: 'sharp',
};
