import { believeOn } from '../../src/bench/advice/board/believe-on.ts';
import { boardModelOf, type BoardModel } from '../../src/bench/advice/board/board-model.ts';
import { KnownBoards } from '../../src/bench/advice/board/known-boards.ts';
import { rankOnBoard } from '../../src/bench/advice/board/rank-on-board.ts';
import { deviceModelOf } from '../../src/bench/advice/device-model.ts';
import { Memo } from '../../src/bench/advice/memo.ts';
import type { BoardPoint } from '../../src/bench/boards/board-knowledge.ts';
import { boardPoints } from '../../src/bench/boards/board-points.ts';
import { BoardWork, boardTask, slicesOf, stepsOf } from '../../src/bench/boards/board-work.ts';
import { GrownKnowledge } from '../../src/bench/boards/grown-knowledge.ts';
import { simulatedPairs } from '../../src/bench/boards/simulated-pairs.ts';
import type { Model } from '../../src/bench/models/index.ts';
import {
  believe,
  nextChecks,
  type Belief,
  type DeviceModel,
  type Evidence,
  type RankedCheck,
  type Stakes,
} from '../../src/core/diagnosis/index.ts';
import type { BenchState } from '../../src/core/diagnosis/readings/index.ts';

/** Whoever works on a device with what one level of its model knows. */
export interface Knower {
  readonly device: DeviceModel;
  believe(evidence: readonly Evidence[]): Belief;
  rank(evidence: readonly Evidence[], stakes: Stakes, bench: BenchState): RankedCheck[];
  /** How a point is measured. */
  point(id: string): BoardPoint | undefined;
}

/** How the points of the whole model are measured, by their ids. */
const pointsOf = (whole: Model): ReadonlyMap<string, BoardPoint> => new Map(boardPoints(whole).map((point) => [point.id, point]));

/** By blocks, with readings of good boards where the model has some. */
export function knowerByBlocks(model: Model, whole: Model): Knower {
  const device = deviceModelOf(model);
  const byId = pointsOf(whole);
  return {
    device,
    believe: (evidence) => believe(device, evidence),
    rank: (evidence, stakes) => nextChecks(device, believe(device, evidence), evidence, stakes),
    point: (id) => byId.get(id),
  };
}

/** By the circuit, with everything of it computed. */
export function knowerByCircuit(model: Model, whole: Model): Knower & { readonly known: BoardModel } {
  const task = boardTask(model, []);
  const work = new BoardWork(task);
  const grown = new GrownKnowledge(task, model.file.id, simulatedPairs(task));
  for (const { from, count } of stepsOf(grown.rows)) for (const slice of slicesOf(task, work.rows(from, count))) grown.take(slice);
  const knowledge = grown.knowledge()!;
  const known = boardModelOf(model, knowledge, model.file.id);
  const boards = new KnownBoards({ knowledge: () => knowledge }, new Memo(10));
  const beliefs = new Memo<ReturnType<typeof believeOn>['onBoard']['belief']>(4);
  const on = (evidence: readonly Evidence[]) => believeOn(boards, known, evidence, JSON.stringify(evidence), beliefs).onBoard;
  const { device } = known;
  const byId = pointsOf(whole);
  return {
    known,
    device,
    believe: (evidence) => on(evidence).belief,
    rank: (evidence, stakes, bench) => rankOnBoard(on(evidence), device, evidence, stakes, new Set(), bench),
    point: (id) => byId.get(id),
  };
}
