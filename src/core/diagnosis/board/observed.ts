import type { DeviceModel } from '../model.ts';
import { standing, type Observation } from '../observation.ts';
import { boardReading, type BoardReading } from './board-reading.ts';
import { boardPointIndex, type BoardSense } from './board-sense.ts';

/** An observation as the circuit weighs it, or one that it does not weigh. */
export type BoardObservation =
  | { readonly kind: 'board'; readonly key: string; readonly reading: BoardReading }
  | { readonly kind: 'plain'; readonly piece: Observation };

/** What still counts of the observations of one time; readings of points that the circuit tells of are weighed by it. */
export function observationOf(model: DeviceModel, sense: BoardSense, observed: readonly Observation[]): BoardObservation[] {
  return standing(observed).map((piece) => {
    const point = piece.kind === 'reading' ? boardPointIndex(sense, piece.point) : -1;
    if (piece.kind !== 'reading' || point < 0) return { kind: 'plain', piece };
    return { kind: 'board', key: `measure ${piece.point}`, reading: boardReading(model, sense, piece.id, point, piece.value) };
  });
}
