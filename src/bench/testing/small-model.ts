import { ModelFile, type Model } from '../models/schema.ts';

type Source = Parameters<typeof ModelFile.parse>[0];

/** A made-up pocket lamp with four blocks, two assemblies and one referenced point: small enough to reckon by hand. */
const LAMP = {
  format: 1,
  id: 'lamp-1',
  name: 'Pocket lamp',
  level: 1,
  currency: 'GBP',
  prices: { working: 4000, spread: 0.2, for_parts: 800 },
  opening_minutes: { open: 5, board_out: 10 },
  unknown_rate: 0.05,
  board: { width_mm: 40, height_mm: 30 },
  blocks: [
    { id: 'cell', name: 'Cell', assembly: 'battery' },
    { id: 'switch', name: 'Switch', assembly: 'board' },
    { id: 'driver', name: 'Driver', assembly: 'board' },
    { id: 'bulb', name: 'Bulb' },
  ],
  slots: [
    { id: 'battery', name: 'Battery', value: 1000, minutes: 2, cautions: ['lithium-cell'] },
    { id: 'board', name: 'Board', value: 3000, minutes: 12, fits: ['lamp-2'] },
  ],
  functions: [
    { id: 'power', name: 'Power', needs: ['cell', 'switch', 'driver'] },
    { id: 'light', name: 'Light', needs: ['cell', 'switch', 'driver', 'bulb'] },
  ],
  faults: [
    { id: 'cell-flat', name: 'cell flat', block: 'cell', mode: 'flat', rate: 0.3, shifts: { 'cell-v': 'low' } },
    { id: 'switch-dirty', name: 'switch dirty', block: 'switch', mode: 'dirty-contact', rate: 0.2, seen: { dirty: 0.6 } },
    { id: 'driver-dead', name: 'driver dead', block: 'driver', mode: 'dead', rate: 0.1 },
    { id: 'bulb-open', name: 'bulb open', block: 'bulb', mode: 'open', rate: 0.2 },
  ],
  accessories: [{ id: 'good-cell', name: 'Known-good cell', block: 'cell' }],
  points: [{ id: 'cell-v', name: 'Cell voltage', block: 'cell', mode: 'volts', stage: 'open' }],
  checks: [
    { id: 'try-power', name: 'Try it', minutes: 1, try: 'power' },
    { id: 'try-good-cell', name: 'Try it with a known-good cell', minutes: 2, try: 'power', with: ['good-cell'] },
    { id: 'look-switch', name: 'Look at the switch', minutes: 2, stage: 'open', look: 'switch' },
    { id: 'measure-cell', name: 'Measure the cell', minutes: 1, stage: 'open', measure: 'cell-v' },
  ],
  remedies: [
    { id: 'clean-switch', name: 'Clean the switch', kind: 'clean', mends: { 'switch-dirty': 0.9 }, minutes: 8, stage: 'open' },
    {
      id: 'new-bulb',
      name: 'New bulb',
      kind: 'replace',
      mends: { 'bulb-open': 0.95 },
      minutes: 6,
      stage: 'open',
      parts: [{ part: 'bulb-3v' }],
    },
    { id: 'other-board', name: 'Another board', kind: 'transplant', mends: { 'driver-dead': 0.9 }, minutes: 12, slot: 'board' },
  ],
  fasteners: [{ id: 'screws', name: 'Screws', drive: 'Cross 00', length_mm: 5, count: 2 }],
  steps: [
    { id: 'open-lamp', name: 'Open it', minutes: 2, fasteners: 'screws', reaches: 'open' },
    { id: 'board', name: 'Lift the board out', after: ['open-lamp'], minutes: 4, reaches: 'board-out' },
  ],
  parts: [{ id: 'bulb-3v', name: 'Bulb 3 V', price: 50 }],
} satisfies Source;

const model = (file: Source, volts: readonly number[]): Model => ({
  file: ModelFile.parse(file),
  readings: volts.map((value, index) => ({ board: `good-${index + 1}`, point: 'cell-v', mode: 'volts', value })),
  photos: [],
});

/** The lamp, a later one whose board fits the first, and one that nothing fits. */
export const smallModels = (): ReadonlyMap<string, Model> =>
  new Map([
    ['lamp-1', model(LAMP, [3.71, 3.69, 3.74])],
    ['lamp-2', model({ ...LAMP, id: 'lamp-2', name: 'Pocket lamp, later', slots: LAMP.slots.map((slot) => ({ ...slot, fits: [] })) }, [])],
    ['lamp-9', model({ ...LAMP, id: 'lamp-9', name: 'Hand lamp', slots: LAMP.slots.map((slot) => ({ ...slot, fits: [] })) }, [])],
  ]);
