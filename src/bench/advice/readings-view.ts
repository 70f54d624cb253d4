import type { DeviceModel } from '../../core/diagnosis/model.ts';
import type { HistoryEntry } from '../state.ts';
import type { ItemFile } from '../views/index.ts';
import type { Judged } from './beliefs.ts';
import { expectedAt } from './board/expected-at.ts';
import { fitsLikeliest } from './board/fits-likeliest.ts';
import { pointName, reading } from './say.ts';

type Point = DeviceModel['points'][number];

/** Each reading beside what good boards show at that point in that mode, with its distance in standard deviations. */
export function readingsView(life: readonly HistoryEntry[], judged: Judged): ItemFile['readings'] {
  const { model, device, board } = judged;
  const changed = life.findLastIndex(({ kind }) => kind === 'remedy' || kind === 'slot');
  const points = new Map(device.points.map((point) => [point.id, point]));
  return life.flatMap((entry, at) => {
    if (entry.kind !== 'reading') return [];
    const point = points.get(entry.point);
    const reference = point?.mode === entry.mode ? point.reference : null;
    const expected = board && point?.mode === entry.mode ? expectedAt(board, entry.point) : null;
    return [
      {
        point: entry.point,
        name: pointName(model, entry.point),
        mode: entry.mode,
        value: entry.value,
        reference: point && reference ? referenceText(point) : null,
        sigmas: sigmas(entry.value, reference ?? (expected && { mean: expected.value, spread: expected.spread, boards: 0 })),
        expected: expected?.text ?? null,
        // A reading from before the last work is of a board that was another then.
        fits: at > changed && point?.mode === entry.mode ? fitsLikeliest(judged, entry.point, entry.value) : null,
        event_id: entry.eventId,
      },
    ];
  });
}

/** "3.28 V ± 0.02 on 4 good boards"; null where no good board was measured. */
export function referenceText({ mode, reference }: Point): string | null {
  if (!reference) return null;
  const on = `on ${reference.boards} good ${reference.boards === 1 ? 'board' : 'boards'}`;
  if (reference.mean === null) return `OL ${on}`;
  return `${reading(reference.mean, mode)} ± ${Number(reference.spread.toPrecision(2))} ${on}`;
}

/** Null where one of the two is OL or there is no reference: the distance is then not a number. */
function sigmas(value: number | null, reference: Point['reference']): number | null {
  if (value === null || !reference || reference.mean === null || reference.spread <= 0) return null;
  return Math.round(((value - reference.mean) / reference.spread) * 100) / 100;
}
