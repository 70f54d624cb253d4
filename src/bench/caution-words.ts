import type { Caution } from './models/index.ts';

/** What each danger asks for. Common practice, no source; local rules and licensed practice come first. */
export const CAUTION_WORDS: Readonly<Record<Caution, string>> = {
  'lithium-cell':
    'Lithium cell: take it out or unplug it first. Never heat, pierce, bend or short it. If it is swollen or hot, stop, put it on stone or metal outdoors, and follow your local rules for it.',
  mains: 'Mains voltage: unplug and wait. Work on the mains side is for those licensed for it where you live.',
  'high-voltage': 'High voltage stays in capacitors after power is off: discharge through a resistor and measure before you touch.',
  'hot-tool': 'Hot tool: stand it in its holder, keep the cable clear, and let the work cool before you touch it.',
  fumes: 'Fumes of flux and hot plastic: work with extraction or at an open window.',
  solvent: 'Solvent burns and irritates: no flame or hot iron near it, gloves on, fresh air.',
  esd: 'Static kills chips: wear the earthed strap, and work on an earthed mat.',
  sharp: 'Sharp edges and springs: cover your eyes, and cut away from yourself.',
};
