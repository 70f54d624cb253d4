import { act, COMMON_PRACTICE, type Recipe } from './recipe.ts';

export const CLEANING: readonly Recipe[] = [
  {
    id: 'clean-after-liquid',
    name: 'Clean a board after liquid',
    materials: [
      'Distilled water',
      'White vinegar, for the crust of alkaline cells only',
      'Isopropyl alcohol, 90 % or more',
      'Soft brush',
      'Lint-free cloth',
    ],
    actions: [
      act('Take every cell and battery out, and unplug all ribbons. Never power a board that is wet.', ['lithium-cell']),
      act('Photograph the stains: they show where the liquid stood, and which parts to doubt.'),
      act('Lift shields and anything that sits on the wet region; liquid creeps under chips and keys.', ['esd', 'sharp']),
      act(
        'On the crust of alkaline cells: a swab of vinegar until it stops fizzing, then water at once. Leave it out for sugar and for salt water.',
      ),
      act('Brush with distilled water until nothing more comes off; it dissolves salt and sugar, which alcohol does not.'),
      act('Rinse with alcohol, brush along the legs of chips, and let it carry the water off.', ['solvent']),
      act('Dry in moving air at no more than 50 °C.', [], { waitMinutes: 120 }),
    ],
    inspect: [
      'Under the lens: green or white at legs, under connectors and in plated holes',
      'Tracks in the wet region from end to end, in ohms',
      'Each supply rail to ground with the power off, against a good board',
    ],
    stopWhen: [
      'A cell got wet or is swollen: it goes to a collecting point, it is not dried and used again',
      'Tracks come off with the brush: mend them first',
    ],
    source: COMMON_PRACTICE,
  },
  {
    id: 'clean-keys',
    name: 'Clean keys, rubber and pads',
    materials: ['Isopropyl alcohol', 'Swabs', 'Warm soapy water for rubber and keycaps'],
    actions: [
      act('Lay the keys out in their places and photograph them.'),
      act('Wash keycaps and rubber in warm soapy water, rinse, and let them dry.', [], { waitMinutes: 30 }),
      act('Wipe the carbon dots of the rubber once with alcohol; do not rub them, they are thin.', ['solvent']),
      act('Wipe the pads of the board with alcohol until the swab stays clean. No abrasive on gold or carbon.', ['solvent', 'esd']),
    ],
    inspect: ['Each key in ohms, pressed: as on a good board, and the same at five presses', 'No lint between dot and pad'],
    stopWhen: ['A dot is worn through or a pad is bare copper: new rubber, or a mended pad'],
    source: COMMON_PRACTICE,
  },
  {
    id: 'clean-contacts',
    name: 'Clean contacts: springs, sockets, switches, wheels',
    materials: ['Isopropyl alcohol', 'Contact cleaner that leaves no film', 'Swabs', 'Glass-fibre pen for springs'],
    actions: [
      act('Take cells and battery out.', ['lithium-cell']),
      act('Springs and battery contacts: take the crust off, then the glass-fibre pen; gloves and glasses, its dust pricks.', ['sharp']),
      act('Switches and wheels: a drop of cleaner at the gap, then work it forty times from end to end.', ['solvent']),
      act('Sockets: a wet swab, then thirty strokes with a clean plug.', ['solvent']),
      act('Let it dry before power comes on.', ['solvent'], { waitMinutes: 10 }),
    ],
    inspect: ['Resistance of the contact while it is moved: below an ohm and without jumps', 'Wheels: from end to end without a gap'],
    stopWhen: ['Plating is gone and green comes back within days: replace the contact'],
    source: COMMON_PRACTICE,
  },
  {
    id: 'clean-slot',
    name: 'Clean a slot or a cartridge',
    materials: ['Isopropyl alcohol', 'Lint-free cloth around a card as thick as the cartridge board', 'Swabs'],
    actions: [
      act('Switch it off and take the battery out.', ['lithium-cell']),
      act('Cartridge edge: swab with alcohol along the contacts, never across, until it stays clean.', ['solvent']),
      act('Slot: the wetted card in and out ten times, then with a dry cloth. Do not force it, bent pins are worse than dirt.', [
        'solvent',
      ]),
      act('Let it dry.', ['solvent'], { waitMinutes: 10 }),
    ],
    inspect: ['Pins in one row and of one height, under the lens', 'It starts three times of three, each time taken out and put in again'],
    stopWhen: ['A pin is bent or sunk: straighten or replace, more cleaning does not help'],
    source: COMMON_PRACTICE,
  },
];
