import type { Caution } from '../models/index.ts';
import { act, COMMON_PRACTICE, type Recipe } from './recipe.ts';

const HOT: readonly Caution[] = ['hot-tool', 'fumes', 'esd'];
const CLEAN_FLUX = act('Wash the flux off with alcohol and a brush, and dry it.', ['solvent'], { waitMinutes: 5 });
const POWER_OFF = act('Battery out and unplugged, capacitors empty.', ['lithium-cell']);

export const JOINTS: readonly Recipe[] = [
  {
    id: 'refresh-joint',
    name: 'Refresh a joint',
    materials: ['Flux, no-clean or rosin', 'Solder of the same alloy', 'Isopropyl alcohol'],
    actions: [
      POWER_OFF,
      act('Clean the joint; old flux and dirt keep solder from wetting.', ['solvent']),
      act('Flux on, then the tip on pad and leg together, a breath of new solder, two to three seconds.', HOT, { heat: 'tip-fine' }),
      act('Take the tip away and keep still until the solder is dull or bright throughout, as its alloy is.', HOT),
      CLEAN_FLUX,
    ],
    inspect: [
      'Solder runs thin to the edge on pad and leg, without a ring around the leg',
      'No bridge to a neighbour',
      'It does not move under a wooden stick',
    ],
    stopWhen: [
      'The pad moves: stop, let it cool, and mend the track',
      'It does not wet after two tries: clean again, or it is not the joint',
    ],
    source: COMMON_PRACTICE,
  },
  {
    id: 'replace-two-terminal',
    name: 'Replace a part with two terminals',
    materials: ['Flux', 'Solder', 'Solder braid', 'The part: value, size and voltage as read and as asked for; mind the stripe'],
    actions: [
      POWER_OFF,
      act('Photograph it with its stripe or mark.'),
      act('Flux, then some fresh solder on both ends, so that both stay molten together.', HOT, { heat: 'tip-fine' }),
      act('Heat both ends in turn, quickly, and slide it off. Never pull: the pad comes with it.', HOT, { heat: 'tip-fine' }),
      act('Level the pads with braid; a little solder on one of them.', HOT, { heat: 'tip-heavy' }),
      act('Hold the new one flat, melt the one pad, then solder the other end, then the first again.', HOT, { heat: 'tip-fine' }),
      CLEAN_FLUX,
    ],
    inspect: [
      'Flat, in the middle, a fillet at both ends',
      'Polarity as in the photograph',
      'Rail to ground with the power off, as on a good board',
    ],
    stopWhen: ['A ceramic part was bent or chipped: take another', 'A pad lifts: mend it before the part goes on'],
    source: COMMON_PRACTICE,
  },
  {
    id: 'replace-connector',
    name: 'Replace a connector, socket or switch',
    materials: ['Flux', 'Solder', 'Low-melting alloy for lifting it off', 'Solder braid', 'The part, compared pad by pad and peg by peg'],
    actions: [
      POWER_OFF,
      act('Compare the new one with the footprint before the old one comes off: pads, pegs, pin order, height.'),
      act('Cover plastic and parts nearby with heat-proof tape.', []),
      act('Flood all terminals with flux and low-melting alloy, go round until all is molten, and lift it straight off.', HOT, {
        heat: 'tip-heavy',
      }),
      act('Take all of the low-melting alloy off with braid and fresh solder, twice: what is left makes joints that fail warm.', HOT, {
        heat: 'tip-heavy',
      }),
      act('Open the holes, clean the pads, dry fit: it must sit flat by itself.', ['solvent']),
      act('Anchor tabs first: one tab, check that it lies flat and square, then the others. They take the force, not the pins.', HOT, {
        heat: 'tip-heavy',
      }),
      act('Then the signal pins, fine tip, flux, one by one; drag only where there is a mask between them.', HOT, { heat: 'tip-fine' }),
      CLEAN_FLUX,
    ],
    inspect: [
      'Flat on the board, the mouth square to the edge',
      'Each pin to its track in ohms, each pin to its neighbours: open',
      'A plug goes in and holds, ten times',
    ],
    stopWhen: ['Terminals do not meet the pads: do not bend it to fit', 'Plastic goes soft: less heat, more flux'],
    source: COMMON_PRACTICE,
  },
  {
    id: 'replace-fine-pitch',
    name: 'Replace a chip with many fine legs',
    materials: ['Flux in plenty', 'Solder, 0.5 mm or thinner', 'Low-melting alloy or hot air', 'Braid', 'Lens'],
    actions: [
      POWER_OFF,
      act('Photograph pin 1 and the mark. Tape over what stands around.'),
      act('With air: warm the board from far, then circle over the legs until the solder shines, and lift it straight up.', HOT, {
        heat: 'air',
      }),
      act('Or with low-melting alloy: a bead along each row, go round until all is molten, lift.', HOT, { heat: 'tip-heavy' }),
      act('Level the pads with braid along the row, never across; wash.', [...HOT, 'solvent'], { heat: 'tip-heavy' }),
      act('Place the chip, pin 1 on its mark, all four sides on their pads. Fix two corners, look again, then go on.', HOT, {
        heat: 'tip-fine',
      }),
      act('Flux along the rows and draw a bead from end to end; take bridges up with braid and flux.', HOT, { heat: 'tip-fine' }),
      CLEAN_FLUX,
    ],
    inspect: [
      'Each leg under the lens from two sides, and with a needle: none moves',
      'Neighbouring legs: open, or as on a good board',
      'Rails to ground before power',
    ],
    stopWhen: [
      'The board turns brown or bubbles: off with the heat',
      'More than one pad lifts: decide again whether this board is worth it',
    ],
    source: COMMON_PRACTICE,
  },
  {
    id: 'repair-track-wire',
    name: 'Repair a torn track with wire',
    materials: ['Insulated wire of a gauge for the worst current of the net', 'Flux', 'Solder', 'Mask lacquer or glue that bears heat'],
    actions: [
      POWER_OFF,
      act('Find both sound ends: scrape the mask off 2 mm of bright copper, or take the legs that the track joins.', ['sharp']),
      act('Reckon the gauge from the current of the net and the drop that it bears; thicker than needed pulls at pads.'),
      act('Tin both places and both ends of the wire.', HOT, { heat: 'tip-fine' }),
      act('Solder one end, lay the wire along the old way, close to the board and away from screws and edges, solder the other.', HOT, {
        heat: 'tip-fine',
      }),
      CLEAN_FLUX,
      act('Hold it down with lacquer every 10 to 15 mm.', ['solvent'], { waitMinutes: 15 }),
    ],
    inspect: [
      'End to end below the resistance that was reckoned',
      'To neighbours and to ground: as on a good board',
      'The shell closes without pressing on it',
    ],
    stopWhen: ['Copper under the mask is black: follow it until it is bright'],
    source: COMMON_PRACTICE,
  },
  {
    id: 'repair-track-foil',
    name: 'Repair a torn track or pad with foil',
    materials: ['Copper foil track or pad of the same width', 'Two-part epoxy that bears soldering', 'Flux', 'Solder', 'Mask lacquer'],
    actions: [
      POWER_OFF,
      act('Cut away what is loose, scrape 3 mm of each end bright.', ['sharp']),
      act('Cut the foil to overlap both ends by twice its width, and glue it down flat.', ['solvent', 'sharp'], { waitMinutes: 60 }),
      act('Solder the overlaps, flat and thin.', HOT, { heat: 'tip-fine' }),
      act('Cover it with mask lacquer, leaving the pads free.', ['solvent'], { waitMinutes: 30 }),
    ],
    inspect: ['End to end as reckoned for its width', 'A pull with a stick does not lift it'],
    stopWhen: ['The board below is charred: scrape it out, coal conducts'],
    source: COMMON_PRACTICE,
  },
];
