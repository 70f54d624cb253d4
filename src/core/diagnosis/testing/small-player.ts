import type { DeviceModel, Evidence, Stakes } from '../model.ts';

/** A player reckoned by hand: one block each for power, sound and picture, and an earphone jack that stands in for the speaker. */
export const SMALL_PLAYER: DeviceModel = {
  faults: [
    fault('cell-flat', 'cell', 0.3, [0.05, 0.05, 0.9], { swollen: 0.2 }, { 'cell-v': 'low', rail: 'zero' }),
    fault('switch-dirty', 'switch', 0.2, [0.1, 0.5, 0.4], { dirty: 0.6 }),
    fault('converter-dead', 'converter', 0.1, [0.02, 0.02, 0.96], { burnt: 0.3 }, { rail: 'zero', coil: 'open' }),
    fault('speaker-open', 'speaker', 0.1, [0.05, 0.1, 0.85]),
    fault('jack-stuck', 'jack', 0.1, [0.1, 0.3, 0.6]),
    fault('display-cracked', 'display', 0.1, [0.2, 0.2, 0.6], { cracked: 0.9 }),
  ],
  functions: [
    { id: 'power', needs: [['cell'], ['switch'], ['converter']] },
    { id: 'sound', needs: [['cell'], ['switch'], ['converter'], ['speaker', 'jack']] },
    { id: 'picture', needs: [['cell'], ['switch'], ['converter'], ['display']] },
  ],
  accessories: [{ id: 'good-cell', block: 'cell' }],
  points: [
    { id: 'cell-v', block: 'cell', mode: 'volts', reference: { mean: 3.7, spread: 0.04, boards: 5 } },
    { id: 'rail', block: 'converter', mode: 'volts', reference: { mean: 3.3, spread: 0.03, boards: 4 } },
    { id: 'coil', block: 'converter', mode: 'ohms', reference: null },
    { id: 'gap', block: 'switch', mode: 'ohms', reference: { mean: null, spread: 0, boards: 3 } },
  ],
  checks: [
    { id: 'try-power', kind: 'try', function: 'power', with: [], minutes: 1, stage: 'closed' },
    { id: 'try-good-cell', kind: 'try', function: 'power', with: ['good-cell'], minutes: 2, stage: 'closed' },
    { id: 'try-sound', kind: 'try', function: 'sound', with: [], minutes: 1, stage: 'closed' },
    { id: 'look-switch', kind: 'look', block: 'switch', minutes: 2, stage: 'open' },
    { id: 'look-shell', kind: 'look', block: 'shell', minutes: 2, stage: 'closed' },
    { id: 'measure-cell', kind: 'measure', point: 'cell-v', minutes: 1, stage: 'open' },
    { id: 'measure-coil', kind: 'measure', point: 'coil', minutes: 1, stage: 'board-out' },
    { id: 'measure-gap', kind: 'measure', point: 'gap', minutes: 1, stage: 'board-out' },
  ],
  remedies: [
    { id: 'new-cell', mends: { 'cell-flat': 0.95 }, minutes: 4, partsCostMinor: 500, risk: 0, stage: 'open' },
    { id: 'clean-switch', mends: { 'switch-dirty': 0.8 }, minutes: 10, partsCostMinor: 10, risk: 0.02, stage: 'open' },
    { id: 'new-converter', mends: { 'converter-dead': 0.8 }, minutes: 40, partsCostMinor: 300, risk: 0.05, stage: 'board-out' },
    { id: 'new-speaker', mends: { 'speaker-open': 0.9 }, minutes: 8, partsCostMinor: 100, risk: 0, stage: 'open' },
    {
      id: 'new-board',
      mends: { 'switch-dirty': 0.97, 'converter-dead': 0.97, 'jack-stuck': 0.97 },
      minutes: 15,
      partsCostMinor: 2500,
      risk: 0.02,
      stage: 'board-out',
    },
  ],
  unknownRate: 0.05,
};

export const STAKES: Stakes = {
  workingMinor: 6000,
  asIsMinor: 1000,
  hourMinor: 1200,
  openingMinutes: { open: 5, 'board-out': 10 },
  stage: 'closed',
};

type Behaves = readonly [works: number, comesAndGoes: number, fails: number];

function fault(
  id: string,
  block: string,
  rate: number,
  [works, comesAndGoes, fails]: Behaves,
  seen: Readonly<Record<string, number>> = {},
  shifts: DeviceModel['faults'][number]['shifts'] = {},
): DeviceModel['faults'][number] {
  return { id, block, rate, behaves: { works, 'comes-and-goes': comesAndGoes, fails }, seen, shifts };
}

type Trial = Extract<Evidence, { kind: 'trial' }>;

export const trial = (id: string, name: string, outcome: Trial['outcome'], accessories: readonly string[] = []): Trial => ({
  id,
  kind: 'trial',
  function: name,
  outcome,
  with: accessories,
});
