import type { DeviceModel, Evidence } from '../../model.ts';
import { ladder, LADDER_FAULTS, LADDER_POINTS, LADDER_REMEDIES, ladderReads, LADDERS } from '../../readings/testing/ladder.ts';
import { kernelsOf } from '../../readings/kernels.ts';
import type { BoardSense } from '../board-sense.ts';

const BEHAVES = { works: 0.02, fails: 0.9, 'comes-and-goes': 0.08 };

/** The ladder as a device: its circuit's faults, and beyond the circuit a shell that may be cracked and a lamp holder that may be worn. */
export const LADDER_PLAYER: DeviceModel = {
  faults: [
    ...LADDER_FAULTS.map(({ id, block, part, rate }) => ({
      id,
      block,
      part,
      rate,
      behaves: BEHAVES,
      seen: (id === 'r3-open' ? { missing: 0.97 } : {}) as Readonly<Record<string, number>>,
      shifts: {},
      works: { lamp: 0 },
    })),
    { id: 'shell-cracked', block: 'shell', rate: 0.04, behaves: BEHAVES, seen: { cracked: 0.95 }, shifts: {} },
    { id: 'holder-worn', block: 'holder', rate: 0.05, behaves: BEHAVES, seen: { worn: 0.6 }, shifts: {} },
  ],
  functions: [
    { id: 'lamp', needs: [['supply'], ['divider'], ['lamp'], ['holder']] },
    { id: 'closes', needs: [['shell']] },
  ],
  accessories: [],
  points: LADDER_POINTS.map(({ id, mode }) => ({ id, block: 'divider', mode, reference: null })),
  checks: [
    { id: 'try-lamp', kind: 'try', function: 'lamp', with: [], minutes: 1, stage: 'closed' },
    { id: 'look-shell', kind: 'look', block: 'shell', minutes: 1, stage: 'closed' },
    ...LADDER_POINTS.map(({ id }) => ({ id: `measure-${id}`, kind: 'measure' as const, point: id, minutes: 1, stage: 'open' as const })),
  ],
  remedies: [
    ...LADDER_REMEDIES,
    { id: 'new-shell', mends: { 'shell-cracked': 0.97 }, minutes: 5, partsCostMinor: 300, risk: 0, stage: 'open' },
    { id: 'new-holder', mends: { 'holder-worn': 0.95 }, minutes: 5, partsCostMinor: 100, risk: 0, stage: 'open' },
  ],
  unknownRate: 0.02,
  parts: 5,
};

export const LADDER_SENSE: BoardSense = { baseline: ladder(), withFault: new Map(), references: new Map() };

/** The same, once the boards are computed that have R2 open already. */
export function withR2Open(): BoardSense {
  const rows = [[], ...LADDER_FAULTS.map(({ id }) => [id])];
  const values = rows.flatMap((faults) => LADDERS.flatMap((board) => ladderReads(board, ['r2-open', ...faults])));
  const { dictionary, limit } = LADDER_SENSE.baseline.kernels;
  const kernels = kernelsOf({ ...dictionary, values: Float64Array.from(values) }, limit);
  return { ...LADDER_SENSE, withFault: new Map([[1, { ...LADDER_SENSE.baseline, kernels }]]) };
}

export const read = (point: string, value: number | null, id = `read ${point}`): Evidence => ({ id, kind: 'reading', point, value });
