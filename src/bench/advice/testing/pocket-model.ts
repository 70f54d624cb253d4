import { ModelFile, type Model, type ReferenceReading } from '../../models/schema.ts';

type Source = Parameters<typeof ModelFile.parse>[0];

/**
 * A made-up pocket player: a battery, a board of four blocks, a display and a speaker. The board's processor cannot be
 * mended, so a unit with a dead one is for another board, for parts, or for nothing.
 */
const POCKET = {
  format: 1,
  id: 'pocket-1',
  name: 'Pocket player',
  level: 1,
  currency: 'GBP',
  prices: { working: 6000, spread: 0.25, for_parts: 1500 },
  cell: { volts: 3.7, chemistry: 'li-ion' },
  opening_minutes: { open: 6, board_out: 6 },
  unknown_rate: 0.04,
  blocks: [
    { id: 'battery', name: 'Battery', assembly: 'battery' },
    { id: 'switch', name: 'Power switch', assembly: 'board' },
    { id: 'converter', name: 'Converter', assembly: 'board' },
    { id: 'processor', name: 'Processor', assembly: 'board' },
    { id: 'slot-contacts', name: 'Cartridge contacts', assembly: 'board' },
    { id: 'display', name: 'Display', assembly: 'display' },
    { id: 'speaker', name: 'Speaker', assembly: 'speaker' },
  ],
  slots: [
    { id: 'battery', name: 'Battery', value: 600, minutes: 2, cautions: ['lithium-cell'] },
    { id: 'board', name: 'Board', value: 1400, minutes: 15, fits: ['pocket-2'] },
    { id: 'display', name: 'Display', value: 1300, minutes: 12 },
    { id: 'speaker', name: 'Speaker', value: 300, minutes: 8 },
  ],
  functions: [
    { id: 'power', name: 'Power', needs: ['battery', 'switch', 'converter'], question: 'Does it switch on and stay on?' },
    { id: 'picture', name: 'Picture', needs: ['battery', 'switch', 'converter', 'processor', 'slot-contacts', 'display'] },
    { id: 'sound', name: 'Sound', needs: ['battery', 'switch', 'converter', 'processor', 'slot-contacts', 'speaker'] },
  ],
  faults: [
    { id: 'battery-flat', name: 'battery worn out', block: 'battery', mode: 'flat', rate: 0.25, shifts: { vsys: 'low' } },
    { id: 'switch-dirty', name: 'power switch dirty', block: 'switch', mode: 'dirty-contact', rate: 0.2, seen: { dirty: 0.5 } },
    { id: 'converter-dead', name: 'converter dead', block: 'converter', mode: 'dead', rate: 0.1, shifts: { vsys: 'zero' } },
    { id: 'processor-dead', name: 'processor dead', block: 'processor', mode: 'dead', rate: 0.06 },
    {
      id: 'contacts-dirty',
      name: 'cartridge contacts dirty',
      block: 'slot-contacts',
      mode: 'dirty-contact',
      rate: 0.25,
      seen: { dirty: 0.6 },
    },
    { id: 'display-cracked', name: 'display cracked', block: 'display', mode: 'cracked', rate: 0.1, seen: { cracked: 0.95 } },
    { id: 'speaker-open', name: 'speaker open', block: 'speaker', mode: 'open', rate: 0.12 },
  ],
  accessories: [{ id: 'good-battery', name: 'Known-good battery', block: 'battery' }],
  points: [{ id: 'vsys', name: 'VSYS at TP3', block: 'converter', mode: 'volts', power: 'battery', stage: 'board-out' }],
  checks: [
    { id: 'try-power', name: 'Switch it on', minutes: 1, try: 'power' },
    {
      id: 'try-power-good-battery',
      name: 'Switch it on with a known-good battery',
      minutes: 2,
      try: 'power',
      with: ['good-battery'],
      cautions: ['lithium-cell'],
    },
    { id: 'try-picture', name: 'Look for a picture', minutes: 2, try: 'picture' },
    { id: 'try-sound', name: 'Listen', minutes: 2, try: 'sound' },
    { id: 'look-switch', name: 'Look at the switch', minutes: 3, stage: 'open', look: 'switch' },
    { id: 'look-contacts', name: 'Look at the contacts', minutes: 1, look: 'slot-contacts' },
    { id: 'look-display', name: 'Look at the display', minutes: 1, look: 'display' },
    { id: 'measure-vsys', name: 'Measure VSYS', minutes: 3, stage: 'board-out', measure: 'vsys' },
  ],
  remedies: [
    {
      id: 'new-battery',
      name: 'Put in a new battery',
      kind: 'replace',
      mends: { 'battery-flat': 0.98 },
      minutes: 3,
      stage: 'closed',
      parts: [{ part: 'cell-900' }],
      cautions: ['lithium-cell'],
    },
    {
      id: 'clean-switch',
      name: 'Clean the switch',
      kind: 'clean',
      mends: { 'switch-dirty': 0.85 },
      minutes: 8,
      stage: 'open',
      cautions: ['solvent'],
    },
    {
      id: 'clean-contacts',
      name: 'Clean the cartridge contacts',
      kind: 'clean',
      mends: { 'contacts-dirty': 0.9 },
      minutes: 4,
      stage: 'closed',
    },
    {
      id: 'new-converter',
      name: 'Replace the converter',
      kind: 'replace',
      mends: { 'converter-dead': 0.75 },
      minutes: 30,
      parts: [{ part: 'conv-5' }],
      risk: 0.05,
      cautions: ['hot-tool', 'fumes'],
    },
    {
      id: 'new-speaker',
      name: 'Replace the speaker',
      kind: 'replace',
      mends: { 'speaker-open': 0.95 },
      minutes: 10,
      stage: 'open',
      parts: [{ part: 'speaker-8' }],
    },
    {
      id: 'other-board',
      name: 'Give it another board',
      kind: 'transplant',
      mends: { 'switch-dirty': 0.97, 'converter-dead': 0.97, 'processor-dead': 0.97, 'contacts-dirty': 0.97 },
      minutes: 15,
      stage: 'board-out',
      slot: 'board',
      risk: 0.01,
    },
    {
      id: 'other-display',
      name: 'Give it another display',
      kind: 'transplant',
      mends: { 'display-cracked': 0.98 },
      minutes: 12,
      stage: 'open',
      slot: 'display',
      risk: 0.02,
    },
  ],
  parts: [
    { id: 'cell-900', name: 'Cell 900 mAh', price: 450 },
    { id: 'conv-5', name: 'Converter 5 V', price: 180 },
    { id: 'speaker-8', name: 'Speaker 8 ohm', price: 150 },
  ],
  fasteners: [{ id: 'shell-screws', name: 'Shell screws', drive: 'PH0', length_mm: 6, count: 5 }],
} satisfies Source;

const VSYS = [3.28, 3.31, 3.3, 3.27];

const readings: readonly ReferenceReading[] = VSYS.map((value, i) => ({ board: `good-${i + 1}`, point: 'vsys', mode: 'volts', value }));

/** A model of the pocket player with some sections changed. */
export const pocketModel = (changes: Partial<Source> = {}, known: readonly ReferenceReading[] = readings): Model => ({
  file: ModelFile.parse({ ...POCKET, ...changes }),
  readings: known,
  photos: [],
});

/** The pocket player, and a later one whose board fits it and which has a fault more. */
export const pocketModels = (): ReadonlyMap<string, Model> => {
  const later = pocketModel({
    id: 'pocket-2',
    name: 'Pocket player, later',
    slots: POCKET.slots.map((slot) => ({ ...slot, fits: [] })),
    faults: [...POCKET.faults, { id: 'processor-joint', name: 'processor joint dry', block: 'processor', mode: 'open', rate: 0.04 }],
  });
  return new Map([
    ['pocket-1', pocketModel()],
    ['pocket-2', later],
  ]);
};
