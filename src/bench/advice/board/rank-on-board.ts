import { BoardReadingsAhead, likelyPart } from '../../../core/diagnosis/board/index.ts';
import { nextChecks, type RankedCheck } from '../../../core/diagnosis/index.ts';
import type { DeviceModel, Evidence, Stakes } from '../../../core/diagnosis/model.ts';
import type { BenchState } from '../../../core/diagnosis/readings/index.ts';
import type { HistoryEntry } from '../../state.ts';
import { openingMinutes } from '../road-option.ts';
import type { OnBoard } from './believe-on.ts';
import { doubtedReading } from './doubted-reading.ts';

/** So many points are thought of. */
const MOST_POINTS = 12;
/** Of those and of the trials and looks, so many. */
const MOST_WEIGHED = 20;
/** The least likely faults, with so much chance together, are not looked at. */
const LEFT_OUT = 0.01;

/** Trials, looks and readings in one order by worth per minute; of the many points of a board those that tell most per minute are weighed. A reading in doubt may be taken again. `alone` is what can be done to the unit. */
export function rankOnBoard(
  { known, sense, belief }: OnBoard,
  alone: DeviceModel,
  evidence: readonly Evidence[],
  stakes: Stakes,
  skip: ReadonlySet<string>,
  bench: BenchState,
): RankedCheck[] {
  const doubted = doubtedReading(belief, evidence);
  const answered = evidence.filter(({ id }) => id !== doubted?.id);
  const read = new Set(pointsSinceChange(answered));
  const likely = likelyPart(alone, belief, LEFT_OUT);
  const ahead = new BoardReadingsAhead(sense, known.bands(), likely, bench, read);
  const skipped = new Set(alone.checks.flatMap((check) => (check.kind === 'measure' && skip.has(check.id) ? [check.point] : [])));
  const opening = (point: string): number => openingMinutes(known.model, stakes.stage, known.points.get(point)!.stage);
  const telling = new Set(ahead.mostTelling(MOST_POINTS, opening, skipped));
  const checks = alone.checks.filter((check) => check.kind !== 'measure' || telling.has(check.point) || !known.points.has(check.point));
  return nextChecks({ ...likely.model, checks }, likely.belief, answered, stakes, { skip, readings: ahead, weighed: MOST_WEIGHED });
}

function pointsSinceChange(evidence: readonly Evidence[]): string[] {
  const change = evidence.findLastIndex(({ kind }) => kind === 'remedy' || kind === 'transplant');
  return evidence.slice(change + 1).flatMap((piece) => (piece.kind === 'reading' ? [piece.point] : []));
}

/** How the bench stands after the last reading of a unit; as one finds it before any. */
export function benchAfter(life: readonly HistoryEntry[], { known }: OnBoard): BenchState {
  const last = life.findLast((entry) => entry.kind === 'reading' && known.points.has(entry.point));
  const point = last?.kind === 'reading' ? known.points.get(last.point) : undefined;
  if (!point) return { side: 'front', power: 'off', mode: 'volts' };
  return { side: point.side === 'back' ? 'back' : 'front', power: point.power, mode: point.mode };
}
