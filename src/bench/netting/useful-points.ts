import { believe, nextChecks, type DeviceModel, type RankedCheck, type Stakes } from '../../core/diagnosis/index.ts';
import type { Evidence } from '../../core/diagnosis/model.ts';
import { believeOn } from '../advice/board/believe-on.ts';
import { KnownBoards } from '../advice/board/known-boards.ts';
import { rankOnBoard } from '../advice/board/rank-on-board.ts';
import { deviceModelOf } from '../advice/device-model.ts';
import { Memo } from '../advice/memo.ts';
import type { Boards } from '../boards/board-knowledge.ts';
import type { Model } from '../models/index.ts';

/** A point that would help to have, for a unit that fails at a function. */
export interface UsefulPoint {
  readonly id: string;
  readonly name: string;
  readonly minutes: number;
  readonly savingMinor: number;
  readonly bits: number;
}

/** What good boards may read where nobody has measured: the middle of what is usual, as far off as is usual. Common practice, no source. */
const USUAL = {
  volts: { mean: 3.3, spread: 0.1 },
  ohms: { mean: 1000, spread: 50 },
  diode: { mean: 0.5, spread: 0.02 },
  amps: { mean: 0.1, spread: 0.01 },
} as const;
const GOOD_BOARDS = 3;
const MOST = 8;
const LEAST_BITS = 0.01;

/** The function that needs most: a unit that fails at it may have nearly anything. Null for a model without functions. */
export const mostNeeding = ({ file }: Model): Model['file']['functions'][number] | null =>
  file.functions.reduce<Model['file']['functions'][number] | null>(
    (best, each) => (best && best.needs.length >= each.needs.length ? best : each),
    null,
  );

/**
 * Points at which readings of good boards are missing, by what knowing one is expected to save on a unit that fails at the function that needs most, the most saving
 * first. Of a model with a circuit these are points of its nets that its file does not name; of others those of its file that nobody measured.
 */
export function usefulPoints(model: Model, boards: Boards | undefined, stakes: Stakes): readonly UsefulPoint[] {
  const knowledge = boards?.knowledge(model, []) ?? null;
  const isReady = knowledge !== null && knowledge.done === knowledge.rows;
  const key = JSON.stringify([isReady && knowledge.hash, stakes]);
  const before = made.get(model);
  if (before?.key === key) return before.points;
  const points = ranked(model, isReady ? boards : undefined, stakes);
  made.set(model, { key, points });
  return points;
}

const made = new WeakMap<Model, { readonly key: string; readonly points: readonly UsefulPoint[] }>();

function ranked(model: Model, boards: Boards | undefined, stakes: Stakes): UsefulPoint[] {
  const failing = mostNeeding(model);
  if (!failing) return [];
  const evidence: Evidence[] = [{ id: 'fails', kind: 'trial', function: failing.id, outcome: 'fails', with: [] }];
  const all = rankedByCircuit(model, boards, evidence, stakes) ?? rankedByBlocks(model, evidence, stakes);
  return all.filter(({ bits }) => bits >= LEAST_BITS).slice(0, MOST);
}

function rankedByCircuit(model: Model, boards: Boards | undefined, evidence: readonly Evidence[], stakes: Stakes): UsefulPoint[] | null {
  const known = new KnownBoards(boards, new Memo(1));
  const board = known.of(model);
  if (!board) return null;
  const { onBoard } = believeOn(known, board, evidence, 'check', new Memo(1));
  const checks = rankOnBoard(onBoard, board.device, evidence, stakes, new Set(), { side: 'front', power: 'off', mode: 'volts' });
  const unnamed = new Map([...board.points.values()].filter(({ named }) => !named).map((point) => [point.id, point.name]));
  return told(checks, unnamed);
}

function rankedByBlocks(model: Model, evidence: readonly Evidence[], stakes: Stakes): UsefulPoint[] {
  const device = deviceModelOf(model);
  const lacking = new Map(device.points.filter(({ reference }) => reference === null).map(({ id }) => [id, nameOf(model, id)]));
  const points = device.points.map((point) =>
    point.reference ? point : { ...point, reference: { ...USUAL[point.mode], boards: GOOD_BOARDS } },
  );
  const whole: DeviceModel = { ...device, points };
  return told(nextChecks(whole, believe(whole, evidence), evidence, stakes), lacking);
}

const nameOf = ({ file }: Model, point: string): string => file.points.find(({ id }) => id === point)?.name ?? point;

function told(checks: readonly RankedCheck[], points: ReadonlyMap<string, string>): UsefulPoint[] {
  return checks
    .flatMap(({ check, minutes, savingMinor, bits }) =>
      check.kind === 'measure' && points.has(check.point)
        ? [{ id: check.point, name: points.get(check.point)!, minutes, savingMinor, bits }]
        : [],
    )
    .sort((a, b) => b.savingMinor - a.savingMinor || b.bits - a.bits);
}
