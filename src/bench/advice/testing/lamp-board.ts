import { ModelFile, modelCircuit, type Model } from '../../models/index.ts';
import { simulatedBoards, type SimulatedOptions } from '../../boards/testing/simulated-boards.ts';
import type { Boards } from '../../boards/board-knowledge.ts';
import { createAdvisor } from '../advisor.ts';
import { assertSound } from './assert-sound.ts';
import { benchOf, bought, saw, tried } from './bench-of.ts';

type Source = Parameters<typeof ModelFile.parse>[0];
export type Steps = Parameters<typeof benchOf>[0];

/** A lamp that can be followed by hand: cell, fuse, a 3.3 V regulator with two capacitors behind it, a divider that enables the driver, and the lamp. */
const NETLIST = `lamp board
XBT1 cell_p 0 BATTERY v=3.9 r=0.1
RJ1_1 cell_p vbat 0.03
RF1 vbat vsys 0.05
XU1 vsys v33 0 vsys LINREG vset=3.3 dropout=0.2 ilimit=0.25
C1 v33 0 10u
C2 v33 0 100n
R1 v33 mid 10k
R2 mid 0 10k
Q1 lamp_k base 0 QN
R3 mid base 22k
R4 v33 lamp_a 47
D1 lamp_a lamp_k DL
C3 vsys 0 10u
.model QN NPN(IS=1e-14 BF=200)
.model DL D(IS=1e-18 N=1.8 RS=5)`;

const PLACEMENT = `Ref,X,Y,Rotation,Side,Value,Package,Block,Nets
BT1,,,,off,Cell,,battery,
J1,5,5,0,front,Spring,WIRES-2,holder,vbat -
F1,10,5,0,front,1 A,1206,fuse,
U1,16,6,0,front,3.3 V,SOT-23,regulator,vsys v33 0
C1,22,5,0,front,10u,0805,regulator,
C2,26,5,0,front,100n,0603,regulator,
C3,12,10,0,back,10u,0805,fuse,
R1,30,5,0,front,10k,0603,driver,
R2,34,5,0,front,10k,0603,driver,
R3,38,5,0,front,22k,0603,driver,
Q1,42,6,0,front,NPN,SOT-23,driver,
R4,46,5,0,front,47,0603,driver,
D1,50,5,0,front,Lamp,0603,lamp,
TP1,30,15,0,front,V33,TP,regulator,v33`;

const LAMP = {
  format: 1,
  id: 'lamp-9',
  name: 'Lamp 9',
  level: 2,
  currency: 'GBP',
  prices: { working: 6000, spread: 0.2, for_parts: 600 },
  cell: { volts: 3.7, chemistry: 'li-ion' },
  opening_minutes: { open: 2, board_out: 2 },
  unknown_rate: 0.03,
  board: { width_mm: 60, height_mm: 20 },
  blocks: [
    { id: 'battery', name: 'Cell', assembly: 'battery' },
    { id: 'holder', name: 'Spring J1', assembly: 'board' },
    { id: 'fuse', name: 'Fuse F1', assembly: 'board' },
    { id: 'regulator', name: 'Regulator U1', assembly: 'board' },
    { id: 'driver', name: 'Driver', assembly: 'board' },
    { id: 'lamp', name: 'Lamp D1', assembly: 'board' },
    { id: 'shell', name: 'Shell', assembly: 'shell' },
  ],
  slots: [
    { id: 'battery', name: 'Cell', value: 300, minutes: 1 },
    { id: 'board', name: 'Board', value: 1500, minutes: 8 },
    { id: 'shell', name: 'Shell', value: 300, minutes: 8 },
  ],
  functions: [
    { id: 'light', name: 'Light', needs: ['battery', 'holder', 'fuse', 'regulator', 'driver', 'lamp'], question: 'Does it light?' },
    { id: 'closes', name: 'Closes', needs: ['shell'] },
  ],
  faults: [
    { id: 'cell-flat', name: 'Cell run down', block: 'battery', mode: 'flat', rate: 0.1, shifts: { vbat: 'low' } },
    { id: 'cell-swollen', name: 'Cell swollen', block: 'battery', mode: 'dead', rate: 0.02, seen: { swollen: 0.9 } },
    { id: 'fuse-open', name: 'Fuse F1 blown', block: 'fuse', mode: 'open', rate: 0.06, seen: { burnt: 0.2 } },
    { id: 'regulator-dead', name: 'Regulator U1 dead', block: 'regulator', mode: 'dead', rate: 0.04 },
    { id: 'spring-dirty', name: 'Spring dirty', block: 'holder', mode: 'dirty-contact', rate: 0.05, seen: { dirty: 0.7 } },
    { id: 'shell-cracked', name: 'Shell cracked', block: 'shell', mode: 'cracked', rate: 0.05, seen: { cracked: 0.95 } },
  ],
  accessories: [{ id: 'good-cell', name: 'Known-good cell', block: 'battery' }],
  points: [
    { id: 'vbat', name: 'VBAT', block: 'holder', mode: 'volts', power: 'battery', stage: 'open' },
    { id: 'V33', name: 'V33 at TP1', block: 'regulator', mode: 'volts', power: 'battery', stage: 'board-out', at: [30, 15] },
  ],
  checks: [
    { id: 'try-light', name: 'Switch it on', minutes: 1, try: 'light' },
    {
      id: 'try-light-good-cell',
      name: 'Switch it on with a known-good cell',
      minutes: 1.5,
      try: 'light',
      with: ['good-cell'],
      cautions: ['lithium-cell'],
    },
    { id: 'try-closes', name: 'Is it whole', minutes: 1, try: 'closes' },
    { id: 'look-shell', name: 'Look at the shell', minutes: 1, look: 'shell' },
    { id: 'look-regulator', name: 'Look at the regulator', minutes: 1.5, stage: 'board-out', look: 'regulator' },
    { id: 'measure-v33', name: 'Measure V33', minutes: 1, stage: 'board-out', measure: 'V33', cautions: ['esd'], how: 'Mind the fuse.' },
  ],
  remedies: [
    { id: 'new-cell', name: 'New cell', kind: 'replace', mends: { 'cell-flat': 0.97, 'cell-swollen': 0.97 }, minutes: 3, stage: 'closed' },
    { id: 'new-fuse', name: 'New fuse', kind: 'replace', mends: { 'fuse-open': 0.85 }, minutes: 8, cautions: ['hot-tool', 'fumes'] },
    { id: 'clean-spring', name: 'Clean the spring', kind: 'clean', mends: { 'spring-dirty': 0.85 }, minutes: 4, stage: 'open' },
    { id: 'new-shell', name: 'New shell', kind: 'replace', mends: { 'shell-cracked': 0.97 }, minutes: 10, stage: 'open' },
    { id: 'other-board', name: 'Board of another', kind: 'transplant', slot: 'board', mends: { 'fuse-open': 0.9 }, minutes: 12 },
  ],
  parts: [],
  circuit: {
    netlist: 'board.cir',
    placement: 'placement.csv',
    rails: { v33: 3.3 },
    states: [
      { id: 'off', name: 'Cell out', set: { BT1: 'out' } },
      { id: 'battery', name: 'On its cell', supplies: { XBT1: 3.9 } },
    ],
    points: { vbat: { red: 'vbat' }, V33: { red: 'v33' } },
    functions: {
      light: {
        state: 'battery',
        needs: [
          { rail: 'v33', within: 0.06 },
          { volts: 'lamp_a', to: 'lamp_k', min: 1.5, max: 2.6 },
        ],
      },
    },
  },
} satisfies Source;

/** The lamp at level 2, with readings of known-good boards where there are any. */
export function lampModel(readings: Model['readings'] = []): Model {
  const file = ModelFile.parse(LAMP);
  const rows = PLACEMENT.split('\n').map((line, i) => ({ line: i + 1, cells: line.split(',') }));
  const read = modelCircuit(file, file.circuit!, NETLIST, { rows, commaIsDecimal: false });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { file, readings, photos: [], circuit: read.circuit };
}

export const LAMP_MODEL = lampModel();
const OPTIONS: SimulatedOptions = {
  draws: 4,
  faults: () => true,
  nets: ['vsys', 'v33', 'mid', 'base', 'lamp_a', 'lamp_k'],
  state: 'battery',
};

/** The boards of the lamp, simulated; `done` rows of them known. */
export const lampBoards = (model = LAMP_MODEL, done?: number) =>
  simulatedBoards(model, done === undefined ? OPTIONS : { ...OPTIONS, done });

const BOARDS = lampBoards();

/** The file of one lamp after such steps, with its circuit, checked by the laws of advice. */
export function lampFile(steps: Steps, { model = LAMP_MODEL, boards = BOARDS }: { model?: Model; boards?: Boards } = {}) {
  const models = new Map([[model.file.id, model]]);
  const parts = createAdvisor(models, boards).fileParts(benchOf([...ONE_LAMP, ...steps], models), 'u1');
  assertSound(parts);
  return parts;
}

const ONE_LAMP: Steps = bought('lot', 'marsh-lane', ['u1'], 'lamp-9');
export const DARK: Steps = [tried('u1', 'light', 'fails'), ['opened-to', { item_id: 'u1', stage: 'board-out' }]];
export const read = (point: string, value: number | null, mode = 'volts'): Steps[number] => [
  'reading-taken',
  { item_id: 'u1', point, mode, value },
];
export const look = (place: string, sees: string): Steps[number] => saw('u1', place, sees);

/** What a board with these faults reads at a point, on one of the drawn boards. */
export function boardReads(point: string, fault: string | null, boards = BOARDS, model = LAMP_MODEL): number | null {
  const { faults, baseline } = boards.knowledge(model, [])!;
  const { points, values, draws } = baseline.kernels.dictionary;
  const row = fault === null ? 0 : 1 + faults.findIndex(({ id }) => id === fault);
  const value = values[(row * draws + 1) * points.length + points.findIndex(({ id }) => id === point)]!;
  return value === Infinity ? null : Number(value.toPrecision(4));
}
